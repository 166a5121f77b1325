export { sayLine } from './lineWords.ts'
