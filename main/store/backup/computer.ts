import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { writeWhole } from '../wholeFile.ts'

/**
 * What this computer knows of its copies. It lies beside the database, not in it: on another computer the second place
 * has another path, and a copy must not carry this one's there.
 */
export interface ComputerCopies {
  /** The second place; null: none is named. */
  place: string | null
  version: number
  /** When a copy was last tried (epoch minute), and what came of it. */
  drill: { at: number; opened: boolean; words: string } | null
}

const file = (dataDir: string) => join(dataDir, 'backups.json')

/** As it was last written; as it begins where it was not, or cannot be read. */
export function readComputer(dataDir: string): ComputerCopies {
  const begins: ComputerCopies = { place: null, version: 0, drill: null }
  try {
    return { ...begins, ...(JSON.parse(readFileSync(file(dataDir), 'utf8')) as Partial<ComputerCopies>) }
  } catch {
    return begins
  }
}

export function writeComputer(dataDir: string, computer: ComputerCopies): void {
  writeWhole(file(dataDir), JSON.stringify(computer))
}
