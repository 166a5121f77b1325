export { degreesWords, marginWords } from './degreesWords.ts'
export { checkGloss, checkTile, geometries } from './gloss.ts'
export { type GlossSet, glossDifferences, glossWarnings } from './glossSet.ts'
export { median } from './median.ts'
export { farOut, robustSpread } from './robust.ts'
export { checkMeasureSettings, type MeasureRules, measureRules } from './shopRules.ts'
export { showTemperature, showTemperatureDifference, showVolume, type UnitSystem } from './show.ts'
export { celsiusOf, fahrenheitOf } from './temperature.ts'
export {
  type CarThickness,
  carThickness,
  checkThickness,
  type ThicknessRules,
  usualThickness,
} from './thickness.ts'
export { thicknessDifferences } from './thicknessChange.ts'
export { convert, type Unit } from './units.ts'
