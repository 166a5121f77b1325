/** The screens of the bar, in the order of a shop's day; the number key after G goes there. */
export const screens = [{ to: '/', label: 'Board' }] as const
