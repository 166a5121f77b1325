export { dayOrders } from './days.ts'
export { type ImportKind, importFields, importKinds, oneOf } from './fields.ts'
export { layerKey, type NewCoating, type NewProduct, readCoating, readProduct } from './goods.ts'
export { CarsOnFile, PeopleOnFile } from './onFile.ts'
export {
  type NewCustomer,
  type NewVehicle,
  readCustomer,
  readVehicle,
} from './people.ts'
export { guessColumns, type Reading, settle } from './reading.ts'
export type { Problem, RowFound, RowRules } from './row.ts'
export { volumeUnits } from './volumes.ts'
