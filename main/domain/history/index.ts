export { type Line, type Say, sayLine } from './lineWords.ts'
