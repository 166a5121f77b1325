import type { Step } from '../schedule/types.ts'
import type { MissedWork, Stage, Treatment, TreatmentProduct } from '../shop/index.ts'

/** What is laid out: a treatment's hands-on steps; its holds follow from the products. */
export type TreatmentTemplate = Omit<Treatment, 'prices'>

/** By id. */
export type Products = ReadonlyMap<string, Omit<TreatmentProduct, 'id'>>

/** A step of one car's chain, ready for the scheduler. */
export type LaidStep = Step & {
  readonly name: string
  readonly stage: Stage
  /** As `needsKey` joins what it needs. */
  readonly needs: string
  readonly productId: string | null
  /** What it costs where the next step comes too late, as its template says. */
  readonly missed?: MissedWork
  readonly missedMin?: number | null
}
