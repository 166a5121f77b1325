import { type CureProfile, commonPracticeProfile } from '../../../main/domain/cure/index.ts'
import type { TreatmentProduct, TreatmentStep } from '../../../main/domain/shop/index.ts'
import type { TreatmentTemplate } from '../../../main/domain/treatment/index.ts'
import type { LayOutInput } from '../../../main/domain/treatment/layOut.ts'
import { sizes, washStep } from '../shop/washStep.ts'

type Product = Omit<TreatmentProduct, 'id'>

/** A step of 60 minutes in a clean bay unless said otherwise. */
export function step(
  change: Partial<Omit<TreatmentStep, 'minutes'>> & { minutes?: number } = {},
): TreatmentStep {
  const { minutes = 60, ...rest } = change
  return {
    ...washStep,
    name: 'Step',
    needs: 'clean',
    skill: null,
    ...rest,
    minutes: sizes(minutes),
  }
}

export function treatment(...steps: TreatmentStep[]): TreatmentTemplate {
  return { name: 'Treatment', steps }
}

/** Its invented sheet lets the car go after 4 h, better after 12 h. */
export function coating(change: Partial<CureProfile> = {}): Product {
  const sheet = { handoverMin: 240, handoverAdvisedMin: 720 }
  return {
    name: 'Ovrel Two',
    kind: 'coating',
    cureProfile: { ...commonPracticeProfile(), ...sheet, ...change },
  }
}

export function topper(change: Partial<CureProfile> = {}): Product {
  return { ...coating(change), name: 'Ovrel Veil', kind: 'topper' }
}

/** A medium glossy car in good condition, on a 15-minute grid, home under cover at the profile's minimum. */
export function input(
  treatments: TreatmentTemplate[],
  products: Record<string, Product> = {},
  change: Partial<LayOutInput> = {},
): LayOutInput {
  return {
    treatments,
    products: new Map(Object.entries(products)),
    sizeClass: 'medium',
    finish: 'gloss',
    condition: 'good',
    conditionFactors: { good: 1, worn: 1.25, heavy: 1.5 },
    gridMin: 15,
    handoverRule: 'minimum',
    leaving: 'covered',
    ...change,
  }
}
