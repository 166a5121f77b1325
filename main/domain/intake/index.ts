export { drawCar, pictureSize } from './carShapes.ts'
export { checkIntake, typedSignature } from './checkIntake.ts'
export { defectWords, kindWords, severityText, waxWords } from './defectWords.ts'
export { readThickness } from './readThickness.ts'
export {
  type BodyShape,
  bodyShapes,
  defectKinds,
  type Severity,
  severities,
  substrates,
  waxStates,
} from './words.ts'
