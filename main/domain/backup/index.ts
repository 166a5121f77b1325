export { copiesToKeep } from './copiesToKeep.ts'
export { copyIsDue, drillIsDue } from './due.ts'
export { type Holdings, holdingsWords } from './holdings.ts'
export { copiesStand, momentWords, type Warning } from './standing.ts'
