export { codeText, type ProofCode, readCode, signedText } from './code.ts'
export { momentForGood, readStatement, type StatementSection, statementText } from './statement.ts'
export { type Findings, isYes, type Verdict, verdictOf, verdictWords } from './verdict.ts'
