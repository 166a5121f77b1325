export { codeText, readCode, signedText } from './code.ts'
export { momentForGood, readStatement, type StatementSection, statementText } from './statement.ts'
export { isYes, verdictOf, verdictWords } from './verdict.ts'
