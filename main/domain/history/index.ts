export { sayLine } from './lineWords.ts'
export { barOf, type ChangedRow, type Way, wayBack } from './takeBack.ts'
