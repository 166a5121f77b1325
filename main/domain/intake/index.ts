export { checkIntake, type SignedIntake } from './checkIntake.ts'
export { type GaugeUnit, panelCalled, readThickness, type SpotReading } from './readThickness.ts'
export {
  type BodyShape,
  bodyShapes,
  type DefectKind,
  defectKinds,
  type Severity,
  type Substrate,
  severities,
  substrates,
  type WaxState,
  waxStates,
} from './words.ts'
