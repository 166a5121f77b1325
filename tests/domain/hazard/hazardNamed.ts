import { type Hazard, hazardsOfCode } from '../../../main/domain/hazard/classes.ts'

/** Every class and category, by their codes H200 to H420. */
export const everyHazard = Array.from({ length: 221 }, (_, i) => hazardsOfCode(`H${200 + i}`)).flat()

/** The class and category of words such as "skin irritation 2". */
export function hazardNamed(words: string): Hazard {
  // CLP calls the only category it has 2, the UN 2A.
  const wanted = words === 'eye irritation 2' ? 'eye irritation 2A' : words
  const found = everyHazard.find(
    ({ kind, category }) => (category ? `${kind} ${category}` : kind).toLowerCase() === wanted.toLowerCase(),
  )
  if (!found) throw new Error(`No hazard class is called "${words}".`)
  return found
}
