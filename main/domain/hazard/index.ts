export type { SignalWord } from './classes.ts'
export { type DataSheet, sheetDoubts, silences } from './dataSheet.ts'
export { flammableStock } from './flammable.ts'
export { handlingNotes } from './handling.ts'
export { hazardStatement } from './hazardStatements.ts'
export { labelFromCodes } from './label.ts'
export { lampCautions } from './lamps.ts'
export { type PictogramCode, pictogram, pictogramCodes } from './pictograms.ts'
export { precautionaryStatement } from './precautionaryStatements.ts'
export { normaliseCode, type Regime } from './regime.ts'
export { sheetTypeOf } from './sheetFile.ts'
export {
  type StorageGroup,
  storageGroups,
  storageGroupWords,
  storageWarnings,
  suggestGroup,
} from './storage.ts'
export { readUnNumber } from './transport.ts'
export { WASTE_STREAMS, wasteNoteOf, wasteStreamsOf } from './waste.ts'
