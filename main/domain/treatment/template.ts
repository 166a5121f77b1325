/** What the shop sells, as it is written down: chains of hands-on steps whose holds follow from the products. */
import type { CureProfile } from '../cure/index.ts'
import type { Step } from '../schedule/types.ts'
import type { Capability, ProductKind, Skill, Stage } from '../shop/words.ts'
import type { SizeClass } from '../vehicle/index.ts'

export interface StepTemplate {
  readonly name: string
  readonly stage: Stage
  /** The capability its bay must have. */
  readonly needs: Capability
  /** The skill each person needs; null: nobody is taken. */
  readonly skill: Skill | null
  /** How many people, 1..9. */
  readonly crew: number
  /** May pause at closing and go on at the next opening. */
  readonly splittable: boolean
  /** Stays in the bay of the treatment's step before. */
  readonly sameBay: boolean
  /** Least and most elapsed minutes after the treatment's step before; null: no limit. */
  readonly waitMin: number | null
  readonly waitMax: number | null
  /** Hands-on minutes; 0: vehicles of that class go without the step. */
  readonly minutes: Readonly<Record<SizeClass, number>>
  /** Whether worn paint makes it longer. */
  readonly byCondition: boolean
  readonly productId: string | null
}

export interface TreatmentTemplate {
  readonly name: string
  readonly steps: readonly StepTemplate[]
}

/** What laying out needs to know of a product. */
export interface LayableProduct {
  readonly name: string
  readonly kind: ProductKind
  readonly cureProfile: CureProfile | null
}

export type Products = ReadonlyMap<string, LayableProduct>

/** A step of one car's chain, ready for the scheduler. */
export type LaidStep = Step & {
  readonly name: string
  readonly stage: Stage
  readonly needs: Capability
  readonly productId: string | null
}
