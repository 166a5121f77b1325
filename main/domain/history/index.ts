export { type Say, sayLine } from './lineWords.ts'
export { barOf, type ChangedRow, wayBack } from './takeBack.ts'
