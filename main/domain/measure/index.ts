export { degreesWords, marginWords } from './degreesWords.ts'
export { median } from './median.ts'
export { showTemperature, showTemperatureDifference, showVolume, type UnitSystem } from './show.ts'
export { celsiusOf, fahrenheitOf } from './temperature.ts'
