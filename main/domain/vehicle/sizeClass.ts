/** Vehicle sizes by the work they make, smallest first. What falls in which is the shop's own call. */
export const sizeClasses = ['small', 'medium', 'large', 'xl'] as const

export type SizeClass = (typeof sizeClasses)[number]
