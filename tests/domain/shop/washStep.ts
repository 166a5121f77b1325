import type { TreatmentStep } from '../../../main/domain/shop/index.ts'

/** As long for every size of car, or as much. */
export const sizes = (value: number) => ({ small: value, medium: value, large: value, xl: value })

/** The plainest step there is, for tests that say only what is otherwise of theirs. */
export const washStep: TreatmentStep = {
  name: 'Wash',
  stage: 'prepare',
  needs: 'wet',
  skill: 'wash',
  crew: 1,
  splittable: false,
  sameBay: false,
  waitMin: null,
  waitMax: null,
  minutes: sizes(60),
  byCondition: false,
  productId: null,
}
