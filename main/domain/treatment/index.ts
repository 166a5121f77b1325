export { checkTreatment, type LayOutRules } from './checkTreatment.ts'
export { type Laid, type LayOutInput, layOut } from './layOut.ts'
export type { LaidStep, LayableProduct, Products, StepTemplate, TreatmentTemplate } from './template.ts'
