/** What an act changed, by table, told to whoever listens. */
import { AsyncLocalStorage } from 'node:async_hooks'
import type Database from 'better-sqlite3'
import type { Prisma } from './generated/client.ts'
import { linesAbout } from './reads.ts'

export interface Save {
  /** Counts the saves since the database was opened. */
  readonly number: number
  /** The tables it changed; null: not known, so it may be any. */
  readonly tables: ReadonlySet<string> | null
}

const collecting = new AsyncLocalStorage<number[]>()

/** Does something, and puts the numbers of the saves that come of it into `saves`. */
export function collectSaves<T>(saves: number[], work: () => T): T {
  return collecting.run(saves, work)
}

export function noteSave({ number }: Save): void {
  collecting.getStore()?.push(number)
}

/** What these audit lines tell of lies in files beside the database. */
const besideTables: ReadonlySet<string> = new Set(['backups'])

/** Changed with every act. */
const always = ['AuditLine', 'Act', 'ActRow']

/** Which tables are kept by triggers on which others: nobody follows them, and they change with those. */
export function keptByTriggers(database: Database.Database, names: Iterable<string>): Map<string, string[]> {
  const triggers = database
    .prepare("select tbl_name as 'table', sql from sqlite_master where type = 'trigger'")
    .all() as { table: string; sql: string }[]
  const kept = new Map<string, string[]>()
  for (const name of names) {
    const mentions = new RegExp(`\\b${name}\\b`)
    for (const { table, sql } of triggers)
      if (table !== name && mentions.test(sql)) kept.set(table, [...(kept.get(table) ?? []), name])
  }
  return kept
}

/** The tables an act has changed so far, asked before it is kept. */
export async function changedTables(
  tx: Prisma.TransactionClient,
  { followed, entities }: { followed: boolean; entities: readonly string[] },
  kept: ReadonlyMap<string, readonly string[]>,
): Promise<Save['tables']> {
  if (!followed || entities.some(entity => besideTables.has(entity))) return null
  const rows = await tx.$queryRaw<{ table: string }[]>`select distinct "table" from temp."followed"`
  return new Set([
    ...always,
    ...entities.map(linesAbout),
    ...rows.flatMap(({ table }) => [table, ...(kept.get(table) ?? [])]),
  ])
}
