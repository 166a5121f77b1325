export { checkMailAddress, type MailAddressCheck, readMailAddress } from './mailAddress.ts'
export { checkCountry, type Phone, parsePhone, phoneCountries, readPhone, showPhone } from './phone.ts'
export { looseKey, type Plate, plateKey, readPlate } from './plate.ts'
export { foldText, likelySame, type Person } from './samePerson.ts'
export { type SizeClass, sizeClasses } from './sizeClass.ts'
export {
  checkVin,
  modelYearOf,
  modelYears,
  normaliseVin,
  type VinCheck,
  type VinProblem,
  type VinRegion,
  vinRegion,
} from './vin.ts'
