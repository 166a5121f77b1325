/**
 * What a backup and an export of a shop of ten years cost whoever works meanwhile, how long they and a restore take, and
 * whether a flipped byte is found.
 */
import { closeSync, copyFileSync, mkdirSync, openSync, readSync, rmSync, statSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { packedFiles } from '../../../main/services/leaving/packed.ts'
import { makeCopy } from '../../../main/store/backup/copies.ts'
import { unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { layOut } from '../../../main/store/backup/restoring.ts'
import { openStore, type Store } from '../../../main/store/store.ts'
import { packFile } from '../../../main/store/tables/packFile.ts'
import { readTables } from '../../../main/store/tables/readTables.ts'
import type { Figure } from '../run.ts'

/** A database of many years at hand, such as `npm run bench -- years` leaves; else one as large is made of audit lines. */
const given = process.env.LUSTRUM_BIG
const madeBytes = 1024 ** 3 * (process.env.LUSTRUM_SAFETY === 'long' ? 1 : 0.05)
const at = 29_604_480
/** As shares of the copy: within its list, twice in the middle, and its last byte. */
const flipped = [0.0001, 0.37, 0.81, 1]

/** An act as a desk makes it, again and again with a pause, until `until` is settled: milliseconds each. */
async function actsDuring(
  store: Store,
  until: Promise<unknown>,
  most = Number.POSITIVE_INFINITY,
): Promise<number[]> {
  const took: number[] = []
  let over = false
  void until
    .catch(() => {})
    .finally(() => {
      over = true
    })
  while (!over && took.length < most) {
    const began = performance.now()
    await store.transact({ who: 'bench', at }, async (tx, audit) => {
      const { id } = await tx.customer.create({ data: { name: 'Bench' } })
      audit({ act: 'added', entity: 'customer', entityId: id })
    })
    took.push(performance.now() - began)
    await wait(20)
  }
  return took
}

const p99 = (of: number[]) => of.toSorted((a, b) => a - b)[Math.floor(of.length * 0.99)] ?? 0

function fill(file: string): void {
  const database = new Database(file)
  const insert = database.prepare(
    "insert into AuditLine (id, at, who, act, entity, entityId, detail) values (lower(hex(randomblob(16))), ?, 'bench', 'noted', 'job', ?, ?)",
  )
  const some = database.transaction((from: number) => {
    for (let i = from; i < from + 20_000; i++)
      insert.run(at, `job-${i}`, JSON.stringify({ words: `${i} `.repeat(60) }))
  })
  for (let from = 0; statSync(file).size < madeBytes; from += 20_000) {
    some(from)
    database.pragma('wal_checkpoint(truncate)')
  }
  database.close()
}

/** Flips a bit at each of these parts of a copy, one after another; how many of them are not found. */
async function flipsNotFound(path: string, parts: readonly number[]): Promise<number> {
  const file = openSync(path, 'r+')
  let passed = 0
  try {
    for (const part of parts) {
      const place = Math.floor(part * (statSync(path).size - 1))
      const byte = Buffer.alloc(1)
      readSync(file, byte, 0, 1, place)
      writeSync(file, Buffer.of(byte[0]! ^ 4), 0, 1, place)
      await unpackCopy(path, null, null).then(
        () => passed++,
        () => {},
      )
      writeSync(file, byte, 0, 1, place)
    }
  } finally {
    closeSync(file)
  }
  return passed
}

export async function* bigShop(dir: string): AsyncGenerator<Figure> {
  const dataDir = join(dir, 'big')
  mkdirSync(dataDir)
  const file = join(dataDir, 'lustrum.db')
  if (given) copyFileSync(given, file)
  await (await openStore(file, { dir: migrationsDir })).close()
  if (!given) fill(file)
  const store = await openStore(file, { dir: migrationsDir })
  const size = `${Math.round(statSync(file).size / 1024 ** 2)} MB`
  const figure = (what: string, value: number, unit: string, most: number): Figure => ({
    bench: 'safety',
    case: `${size}: ${what}`,
    value: Math.round(value * 10) / 10,
    unit,
    goal: `≤ ${most} ${unit}`,
    met: value <= most,
  })
  const alone = await actsDuring(store, new Promise(() => {}), 200)
  const added = (what: string, during: number[]) =>
    figure(
      `what ${what} adds to an act at the 99th percentile of ${during.length}, beside ${Math.round(p99(alone))} ms without`,
      Math.max(0, p99(during) - p99(alone)),
      'ms',
      50,
    )
  const copyBegan = performance.now()
  const copying = makeCopy(file, { at, passphrase: null })
  yield added('a backup', await actsDuring(store, copying))
  const { path, bytes } = await copying
  const took = (began: number) => Math.round((performance.now() - began) / 100) / 10
  const informs = (what: string, value: number): Figure => ({
    bench: 'safety',
    case: `${size}: ${what}`,
    value,
    unit: 's',
    goal: null,
    met: null,
  })
  yield informs(`a backup, checked (${Math.round(bytes / 1024 ** 2)} MB)`, took(copyBegan))
  const read = readTables(file)
  const packBegan = performance.now()
  const zip = join(dir, 'everything.zip')
  const packing = packFile(zip, packedFiles({ read, nowAt: at })).finally(() => read.close())
  yield added('an export', await actsDuring(store, packing))
  await packing
  yield informs(`an export (${Math.round(statSync(zip).size / 1024 ** 2)} MB)`, took(packBegan))
  await store.close()
  const other = join(dir, 'restored')
  mkdirSync(other)
  const began = performance.now()
  const laidOut = await layOut(other, path, null)
  await (await openStore(laidOut.file, { dir: migrationsDir })).close()
  yield figure('restore', (performance.now() - began) / 1000, 's', 60)
  yield figure('bits flipped in a copy and not found, of 4', await flipsNotFound(path, flipped), 'bits', 0)
  rmSync(dataDir, { recursive: true })
}
