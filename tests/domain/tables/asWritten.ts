import { defused } from '../../../main/domain/tables/index.ts'

/** A cell as it was before it was defused, by what the file itself tells its reader: one apostrophe taken off. */
export function asWritten(cell: string): string {
  return cell.startsWith("'") && defused(cell.slice(1)) === cell ? cell.slice(1) : cell
}
