import { Refusal } from '../refusal.ts'

/** Vehicle sizes by the work they make, smallest first. What falls in which is the shop's own call. */
export const sizeClasses = ['small', 'medium', 'large', 'xl'] as const

export type SizeClass = (typeof sizeClasses)[number]

/** Words for each size. Common practice, no source: shops draw the lines differently. */
export const sizeClassWords: Readonly<Record<SizeClass, { name: string; example: string }>> = {
  small: { name: 'Small', example: 'two-seater, city car, motorcycle' },
  medium: { name: 'Medium', example: 'hatchback, saloon, coupé' },
  large: { name: 'Large', example: 'estate, crossover, small van' },
  xl: { name: 'Extra large', example: 'full-size off-roader, pickup, van, three rows of seats' },
}

/** The size class a word names; refuses any other word. */
export function sizeClassNamed(word: string, field = 'sizeClass'): SizeClass {
  const found = sizeClasses.find(size => size === word.trim().toLowerCase())
  if (!found)
    throw new Refusal(
      'size-class-unknown',
      field,
      word,
      `"${word}" is not a vehicle size; use ${sizeClasses.slice(0, -1).join(', ')} or ${sizeClasses.at(-1)}.`,
    )
  return found
}
