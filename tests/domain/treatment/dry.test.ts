import { expect, test } from 'vitest'
import type { Stage, TreatmentStep } from '../../../main/domain/shop/index.ts'
import { chainOf } from '../../../main/domain/treatment/chainOf.ts'
import { wetNotes } from '../../../main/domain/treatment/dry.ts'

/** The notes on treatments of steps named by stage and bay: `prepare wet`. */
function notes(...treatments: string[][]): string[] {
  const templates = treatments.map((steps, t) => ({
    name: `T${t}`,
    steps: steps.map((each): TreatmentStep => {
      const [stage, needs] = each.split(' ') as [Stage, 'wet' | 'clean']
      const minutes = { small: 30, medium: 30, large: 30, xl: 30 }
      const rules = { crew: 1, splittable: false, sameBay: false, waitMin: null, waitMax: null }
      return {
        name: each,
        stage,
        needs,
        skill: 'wash',
        ...rules,
        minutes,
        byCondition: false,
        productId: null,
      }
    }),
  }))
  return wetNotes(chainOf(templates, () => 30))
}

test('a step that wants a dry car right after a wash is told, once', () => {
  expect(notes(['prepare wet', 'correct clean', 'wipe clean'])).toEqual([
    expect.stringContaining('"correct clean" wants a dry car, and nothing dries it after "prepare wet"'),
  ])
  expect(notes(['prepare wet', 'wipe clean'])).toHaveLength(1)
})

test('a drying step between them is enough, whichever treatment brings it', () => {
  expect(notes(['prepare wet', 'dry wet', 'correct clean'])).toEqual([])
  expect(notes(['prepare wet', 'correct clean'], ['dry wet'])).toEqual([])
  expect(notes(['prepare wet', 'rinse wet', 'wipe clean'])).toEqual([])
})

test('work that needs no dry car, and a dry car, ask for nothing', () => {
  expect(notes(['prepare wet', 'finish wet'])).toEqual([])
  expect(notes(['prepare clean', 'correct clean'])).toEqual([])
})
