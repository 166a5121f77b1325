export { chainOf } from './chainOf.ts'
export { type Laid, type LayOutInput, layOut } from './layOut.ts'
export type { LaidStep, Products, TreatmentTemplate } from './template.ts'
