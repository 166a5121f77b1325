export { type Hazard, hazardNamed, hazardsOfCode, type SignalWord } from './classes.ts'
export { type DataSheet, type Silence, sheetDoubts, silences } from './dataSheet.ts'
export { type FlammableStock, flammableStock, type StockedVolume } from './flammable.ts'
export { hazardCodes, hazardStatement } from './hazardStatements.ts'
export {
  type Label,
  type LabelFromCodes,
  labelFromCodes,
  labelOf,
  signalWordOf,
  statementsNeeded,
} from './label.ts'
export {
  asymmetryMultiplier,
  distanceMultiplier,
  horizontalMultiplier,
  type Lift,
  type LiftAdvice,
  liftAdvice,
  verticalMultiplier,
} from './lifting.ts'
export {
  type Pictogram,
  type PictogramCode,
  type PictogramLayer,
  pictogram,
  pictogramCodes,
  pictogramSvg,
} from './pictograms.ts'
export { hasGap, precautionaryCodes, precautionaryStatement } from './precautionaryStatements.ts'
export { protectionNamed } from './protection.ts'
export { normaliseCode, type Regime, regimes } from './regime.ts'
export { type SheetType, sheetTypeOf } from './sheetFile.ts'
export {
  type ShelvedProduct,
  type StorageGroup,
  type StorageWarning,
  storageGroupNamed,
  storageGroups,
  storageGroupWords,
  storageWarnings,
  suggestGroup,
  whyApart,
} from './storage.ts'
export { readUnNumber, type TransportEntry, transportEntry } from './transport.ts'
