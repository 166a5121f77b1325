export { median } from './median.ts'
export { showTemperature, showTemperatureDifference, showVolume } from './show.ts'
export { celsiusOf, fahrenheitOf } from './temperature.ts'
