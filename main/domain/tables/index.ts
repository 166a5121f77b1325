export {
  type Column,
  type ColumnType,
  cells,
  headings,
  type RowRead,
  record,
  schemaOf,
  type TableShape,
  type Value,
} from './columns.ts'
export { asWritten, defused } from './formulas.ts'
export { erasedWords, type KnownBy, redactor, rewritten } from './redacting.ts'
