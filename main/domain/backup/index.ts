export { copiesToKeep } from './copiesToKeep.ts'
export { copyIsDue, drillIsDue } from './due.ts'
export { type Holdings, holdingsWords } from './holdings.ts'
export { type CopiesMade, copiesStand, momentWords, type SecondPlace, type Warning } from './standing.ts'
