export { degreesWords, marginWords } from './degreesWords.ts'
export { geometries } from './gloss.ts'
export { type GlossSet, glossDifferences, glossWarnings } from './glossSet.ts'
export { median } from './median.ts'
export { farOut, robustSpread } from './robust.ts'
export { showTemperature, showTemperatureDifference, showVolume, type UnitSystem } from './show.ts'
export { celsiusOf, fahrenheitOf } from './temperature.ts'
export {
  type CarThickness,
  carThickness,
  checkThickness,
  usualThickness,
} from './thickness.ts'
export { convert, type Unit } from './units.ts'
