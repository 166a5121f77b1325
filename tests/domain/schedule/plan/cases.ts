import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { type Laying, layFloor } from '../../../../main/domain/schedule/plan/layFloor.ts'
import { readShop } from '../../../../main/domain/schedule/plan/readShop.ts'
import type { FloorObjective, FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import { readFloor } from '../../../../main/domain/schedule/readCase.ts'
import { smallProblem } from '../cases.ts'

export interface FloorCase {
  readonly floor: FloorProblem
  readonly optimal: FloorObjective & { readonly proven: boolean }
}

const read = (name: string) =>
  JSON.parse(
    readFileSync(
      fileURLToPath(new URL(`../../../reference/scheduling/${name}.json`, import.meta.url)),
      'utf8',
    ),
  )

/** The shop cases with the best objectives known; tests/reference/README.md says by whom. */
export function floorCases(name: 'small' | 'medium'): FloorCase[] {
  const { cases } = read(name) as { cases: { optimal: FloorCase['optimal'] }[] }
  return cases.map(source => ({ floor: readFloor(source), optimal: source.optimal }))
}

/** A classic job shop with its optimal makespans. */
export function shopCase(name: string) {
  const { optima } = read('optima') as { optima: Record<string, Record<string, { makespan: number }>> }
  return { shop: readShop(read('instances'), name), optima: optima[name]! }
}

/** The last that a search comes to, after so many yields at the most. */
export function lastOf<T>(search: Iterator<T, T>, yields = Number.POSITIVE_INFINITY): T {
  for (let i = 1; ; i++) {
    const { value, done } = search.next()
    if (done || i >= yields) return value
  }
}

/** The floor laid to the proof. */
export function laid(floor: FloorProblem, seed = 1): Laying {
  return lastOf(layFloor(floor, { seed }))
}

/**
 * Small floors of one to `most` cars in which everything can go wrong; made of the promise's small cases. With `help`,
 * work may want more people for a part of it.
 */
export function smallFloor(most = 3, help = false): fc.Arbitrary<FloorProblem> {
  const small = smallProblem({ extensions: false, help })
  const floors = fc.tuple(small, fc.array(small, { maxLength: most - 1 }))
  return floors.map(([{ newJob, ...shop }, others]) => {
    const jobs = [newJob, ...others.map(one => one.newJob)].map(({ release, steps }, j) => ({
      id: `j${j}`,
      release,
      steps,
      due: shop.horizon >> (j % 3),
      weight: (j % 3) + 1,
    }))
    return { ...shop, jobs }
  })
}

/** Few grid points, two steps a car and few places, so that every plan can be tried. */
export function shrunk(floor: FloorProblem): FloorProblem {
  const horizon = floor.grid * 12
  return {
    ...floor,
    horizon,
    bays: floor.bays.slice(0, 2),
    crew: floor.crew.slice(0, 2),
    fixed: floor.fixed.filter(stay => ['b0', 'b1'].includes(stay.bay)).slice(0, 1),
    jobs: floor.jobs.map(job => ({
      ...job,
      release: Math.min(job.release, 3 * floor.grid),
      due: horizon >> 1,
      steps: job.steps
        .slice(0, 2)
        .map(step => ({ ...step, minutes: Math.min(step.minutes, 4 * floor.grid) })),
    })),
  }
}

/** Lends two things with some of the cars, and for a time with others that are not laid. */
export const lending = fc
  .record({
    cars: fc.array(fc.constantFrom(['car'], ['car', 'box'], []), { minLength: 2, maxLength: 4 }),
    from: fc.nat(9),
    length: fc.nat(3),
  })
  .map(
    ({ cars, from, length }) =>
      (floor: FloorProblem): FloorProblem => ({
        ...floor,
        jobs: floor.jobs.map((job, j) => ({ ...job, things: cars[j] })),
        lent: [{ thing: 'car', from: from * floor.grid, to: (from + length) * floor.grid + 7 }],
      }),
  )
