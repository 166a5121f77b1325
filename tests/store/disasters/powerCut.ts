import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { setImmediate } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { openStore } from '../../../main/store/store.ts'

/** What the disk held when an act was answered: nothing after it had been asked to last. */
export interface Answered {
  act: number
  /** The database file, and how long its log was. */
  database: Buffer
  log: Buffer
}

/**
 * Writes acts and keeps what lay in the files as each was answered. `synchronous = full` waits for the log at every
 * commit, so all of it was on the disk by then; what comes later may be there in any part.
 */
export async function recordActs(file: string, acts: number): Promise<Answered[]> {
  const store = await openStore(file, { dir: migrationsDir })
  const answered: Answered[] = []
  try {
    for (let act = 1; act <= acts; act++) {
      await store.transact({ who: 'writer', at: act }, async (tx, audit) => {
        const customer = await tx.customer.create({ data: { name: `Customer ${act}` } })
        await tx.vehicle.create({ data: { customerId: customer.id, plate: `P${act}`, sizeClass: 'small' } })
        audit({ act: 'made', entity: 'customer', entityId: customer.id })
      })
      answered.push({ act, database: readFileSync(file), log: readFileSync(`${file}-wal`) })
      await setImmediate()
    }
  } finally {
    await store.close()
  }
  return answered
}

/** What a disk writes whole or not at all; the least that any does. */
const sector = 512

/**
 * Lays the files down as a power cut between two answers leaves them: all of the earlier, and of what the later wrote to
 * the log any of its pages, in any order, the last cut anywhere.
 */
export function cutPower(file: string, before: Answered, after: Answered, random: () => number): void {
  for (const end of ['-wal', '-shm']) rmSync(file + end, { force: true })
  writeFileSync(file, before.database)
  const log = Buffer.alloc(after.log.length)
  before.log.copy(log)
  for (let at = before.log.length; at < after.log.length; at += sector)
    if (random() < 0.5) after.log.copy(log, at, at, Math.min(at + sector, after.log.length))
  const length = before.log.length + Math.floor(random() * (log.length - before.log.length + 1))
  writeFileSync(`${file}-wal`, log.subarray(0, length))
}

/**
 * The same in the middle of a checkpoint: the log is whole, since it was flushed before, and any sectors of the database
 * have been written over from it.
 */
export function cutPowerInCheckpoint(file: string, at: Answered, random: () => number): void {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true })
  writeFileSync(file, at.database)
  writeFileSync(`${file}-wal`, at.log)
  const database = new Database(file)
  database.pragma('wal_checkpoint(passive)')
  const folded = readFileSync(file)
  database.close()
  const torn = Buffer.alloc(folded.length)
  at.database.copy(torn)
  for (let from = 0; from < folded.length; from += sector)
    if (random() < 0.5) folded.copy(torn, from, from, Math.min(from + sector, folded.length))
  rmSync(`${file}-shm`, { force: true })
  writeFileSync(file, torn)
  writeFileSync(`${file}-wal`, at.log)
}
