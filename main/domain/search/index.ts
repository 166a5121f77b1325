export { PeopleIndex } from './peopleIndex.ts'
