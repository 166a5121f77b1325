export { chainOf } from './chainOf.ts'
export { type Laid, layOut } from './layOut.ts'
export { assertOneCoating, coatedTwice } from './oneCoating.ts'
export type { LaidStep, TreatmentTemplate } from './template.ts'
