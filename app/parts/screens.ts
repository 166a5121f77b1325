/** The screens of the bar, in the order of a shop's day. */
export const screens = [
  { to: '/', label: 'Board' },
  { to: '/book', label: 'Book' },
  { to: '/morning', label: 'Morning' },
] as const
