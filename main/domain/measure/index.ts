export {
  concentrateShare,
  type DilutionRatio,
  type Mixture,
  mixFromConcentrate,
  mixTotal,
  type RatioReading,
  ratioMixed,
  ratioOfOuncesPerGallon,
  readRatio,
} from './dilution.ts'
export { type LabelSize, labelSize } from './labelSize.ts'
export { median } from './median.ts'
export {
  showTemperature,
  showTemperatureDifference,
  showVolume,
  type UnitSystem,
} from './show.ts'
export {
  celsiusOf,
  differenceCelsiusOf,
  differenceFahrenheitOf,
  fahrenheitOf,
} from './temperature.ts'
export { convert, type Dimension, dimensionOf, type Unit, unitNamed } from './units.ts'
