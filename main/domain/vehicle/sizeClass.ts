import { word } from '../language/index.ts'

/** Vehicle sizes by the work they make, smallest first. What falls in which is the shop's own call. */
export const sizeClasses = [word('small'), word('medium'), word('large'), word('xl')] as const

export type SizeClass = (typeof sizeClasses)[number]
