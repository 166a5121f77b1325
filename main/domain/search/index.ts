export { type Likeness, likelihood, likeness, type Marks } from './alike.ts'
export { PeopleIndex } from './peopleIndex.ts'
