import { say } from '../../domain/language/index.ts'
import { oneLine } from '../oneLine.ts'
import { inspectBeside } from './inspectBeside.ts'

const damage = new Map<string, string>()
const underWay = new Map<string, Promise<void>>()

/** Reads an open database over in the background, after a clean end too: a disk forgets without a crash. */
export function readOver(file: string): Promise<void> {
  const reading = inspectBeside(file)
    .then(
      ({ fault }) => {
        if (fault !== null) note(file, fault)
      },
      error => note(file, (error as Error).message),
    )
    .finally(() => underWay.delete(file))
  underWay.set(file, reading)
  return reading
}

/** Waits for a reading under way: as long as it holds the database, SQLite leaves the log beside it. */
export async function readingOverEnds(file: string): Promise<void> {
  await underWay.get(file)
}

function note(file: string, fault: string): void {
  damage.set(
    file,
    say(
      'The database is damaged ({fault}). What can still be read is shown; restore a copy in the settings, under Backups, before more is lost.',
      { fault: oneLine(fault) },
    ),
  )
}

/** Notes what a start found, to be said on the first screen. */
export function noteAtStart(file: string, words: string): void {
  damage.set(file, words)
}

/** What is wrong with the file as far as this run knows, in words; null: nothing so far. */
export function foundDamage(file: string): string | null {
  return damage.get(file) ?? null
}
