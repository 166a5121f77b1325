import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { shopIdOf } from './backup/inspect.ts'
import { explain } from './explain.ts'
import { type Prisma, PrismaClient } from './generated/client.ts'
import { inPlainWords, toRefusal } from './integrity.ts'
import { forgetReads, mayKeepReads } from './kept.ts'
import { type MigrationFiles, migrate } from './migrate.ts'
import { onlyAsking } from './reads.ts'
import { changedTables, keptByTriggers, noteSave, type Save } from './saves.ts'
import { openSecrets, type Secrets } from './secrets.ts'
import { openSigner, type Signer } from './signingKey.ts'
import { pairedAdapter } from './sqlite.ts'
import {
  type ActStamp,
  dropOldActs,
  forgetFollowed,
  keepAct,
  stopFollowing,
  takeBackMin,
} from './undo/followed.ts'
import { unwatched, type WatchedTable, watchedTables, watchScript } from './undo/watch.ts'
import { watchFile } from './watchFile.ts'

/** The client inside one transaction. */
export type Tx = Prisma.TransactionClient

/** What is written beside a change: the act in a word, what it touched, and what is worth keeping of it. */
export interface AuditEntry {
  act: string
  entity: string
  entityId: string
  detail?: Prisma.InputJsonValue
}

/** Whose act it is, and when. */
export interface Stamp extends ActStamp {
  /** Its rows are not kept to be taken back. */
  readonly followed?: false
}

export interface Store {
  /** The database file, the shop it is known as, and what brings it, or a copy of it, up to date. */
  source: { file: string; shopId: string; migrations: MigrationFiles }
  /** Throws the refusal with which nothing can be saved: the file is gone, or another is in its place. */
  assertThere(): void
  /** Reads only, and is held to it: a connection of its own, so that it never sees another request's unfinished writes. */
  read: PrismaClient
  /**
   * All writes of one act, with its audit lines, or none. Writers are served one after another, so what a
   * transaction has read cannot change before it commits. Each row it changes is kept for a day, so that the act can be
   * taken back; `followed: false` where that is done elsewhere, or cannot be done.
   */
  transact<T>(stamp: Stamp, work: (tx: Tx, audit: (entry: AuditEntry) => void) => Promise<T>): Promise<T>
  /** The tables whose rows are followed. */
  watched: ReadonlyMap<string, WatchedTable>
  /** Passwords, kept apart from the database and its copies. */
  secrets: Secrets
  /** The key certificates are signed with; copies take it along. */
  signer: Signer
  /** Calls back after each commit with the rows its audit lines name and the tables it changed; returns the way to stop. */
  onCommit(listener: (touched: readonly AuditEntry[], save: Save) => void): () => void
  /** The refusal for what the database would not do, where a caller brought it about; any other error as it is. */
  explain(error: unknown): unknown
  close(): Promise<void>
}

/** Opens the database file, bringing it up to date first. Refuses one that is damaged or written by a newer version. */
export async function openStore(file: string, files: MigrationFiles): Promise<Store> {
  const migrated = await migrate(file, files).catch(error => {
    throw toRefusal(file, error)
  })
  const { shopId, watched, kept } = inPlainWords(file, () => {
    const raw = new Database(file)
    try {
      raw.pragma('journal_mode = WAL')
      // Rows kept in the form of another version fit no table any more.
      if (migrated.length > 0) raw.exec('delete from "ActRow"; update "Act" set "rows" = null')
      return {
        shopId: shopIdOf(raw) ?? '',
        watched: watchedTables(raw),
        kept: keptByTriggers(raw, unwatched),
      }
    } finally {
      raw.close()
    }
  })
  const client = new PrismaClient({ adapter: pairedAdapter(file, watchScript(watched)) })
  const read = onlyAsking(client)
  mayKeepReads(read)
  const assertThere = watchFile(file)
  // Opened here and now: Prisma would do so with the first question, on whatever lies there by then.
  await client.$connect()
  await read.$queryRaw`select count(*) from sqlite_master`
  const listeners = new Set<Parameters<Store['onCommit']>[0]>()
  let saves = 0
  let droppedAt = 0
  return {
    read,
    watched,
    source: { file, shopId, migrations: files },
    assertThere,
    secrets: openSecrets(join(dirname(file), 'secrets.json')),
    signer: openSigner(dirname(file)),
    async transact(stamp, work) {
      assertThere()
      const entries: AuditEntry[] = []
      let tables: Save['tables'] = null
      const result = await client
        .$transaction(
          async tx => {
            const { who, at, followed = true } = stamp
            if (!followed) await stopFollowing(tx, true)
            const result = await work(tx, entry => entries.push(entry))
            if (!followed) await stopFollowing(tx, false)
            if (entries.length === 0) {
              await forgetFollowed(tx)
              return result
            }
            const entities = entries.map(entry => entry.entity)
            tables = await changedTables(tx, { followed, entities }, kept)
            const actId = await keepAct(tx, stamp, followed)
            await tx.auditLine.createMany({
              data: entries.map(entry => ({ who, at, actId, ...entry, detail: entry.detail ?? {} })),
            })
            if (Math.abs(at - droppedAt) > takeBackMin / 24) {
              await dropOldActs(tx, at)
              droppedAt = at
            }
            return result
          },
          { maxWait: 30_000, timeout: 60_000 },
        )
        .finally(() => forgetReads(read))
      // Committed into a file that went meanwhile, it would be answered and lost.
      assertThere()
      if (entries.length > 0) {
        const save = { number: ++saves, tables }
        noteSave(save)
        for (const listener of listeners) listener(entries, save)
      }
      return result
    },
    onCommit(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    explain(error) {
      try {
        assertThere()
        return explain(error, file)
      } catch (gone) {
        return gone
      }
    },
    async close() {
      await client.$disconnect()
    },
  }
}

/**
 * Guards an update against a stale edit: `count` is what `updateMany({ where: { id, version }, ... })` touched.
 * Refuses where somebody else saved first.
 */
export function assertFresh(count: number, entity: string, id: string): void {
  if (count === 0)
    throw new Refusal(
      'stale',
      entity,
      id,
      say('Somebody else changed this {entity} meanwhile: look at it again, then repeat your change.', {
        // "By message" is how an owner asks to be told.
        entity: entity === 'message' ? say('message||history') : say(entity),
      }),
    )
}
