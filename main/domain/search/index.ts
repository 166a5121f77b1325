export { slipsBetween } from './editDistance.ts'
export type { Findable } from './entry.ts'
export { PeopleIndex } from './peopleIndex.ts'
