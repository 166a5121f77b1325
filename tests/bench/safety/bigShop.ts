/** What a backup of a shop of ten years costs whoever works meanwhile, and how long its restore takes. */
import { copyFileSync, mkdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { makeCopy } from '../../../main/store/backup/copies.ts'
import { layOut } from '../../../main/store/backup/restoring.ts'
import { openStore, type Store } from '../../../main/store/store.ts'
import type { Figure } from '../run.ts'

/** A database of many years at hand, such as `npm run bench -- years` leaves; else one as large is made of audit lines. */
const given = process.env.LUSTRUM_BIG
const madeBytes = 1024 ** 3 * (process.env.LUSTRUM_SAFETY === 'long' ? 1 : 0.05)
const at = 29_604_480

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
  const copying = makeCopy(file, { at, passphrase: null })
  const during = await actsDuring(store, copying)
  const { path } = await copying
  yield figure(
    `what a backup adds to an act at the 99th percentile of ${during.length}, beside ${Math.round(p99(alone))} ms without one`,
    Math.max(0, p99(during) - p99(alone)),
    'ms',
    50,
  )
  await store.close()
  const other = join(dir, 'restored')
  mkdirSync(other)
  const began = performance.now()
  const laidOut = await layOut(other, path, null)
  await (await openStore(laidOut.file, { dir: migrationsDir })).close()
  yield figure('restore', (performance.now() - began) / 1000, 's', 60)
  rmSync(dataDir, { recursive: true })
}
