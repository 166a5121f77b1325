import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { migrate } from '../../../main/store/migrate.ts'
import { makeFolder } from '../openDatabase.ts'
import { readAll } from './rows.ts'
import { migrationsOf } from './versions.ts'

const all = readdirSync(migrationsDir).sort()

test('A wipe that a coat follows gets its 45 minutes, sold or booked; what is over or begun keeps what it was', async () => {
  const dir = makeFolder()
  const file = join(dir, 'lustrum.db')
  const at = all.findIndex(name => name.endsWith('_next_within'))
  await migrate(file, migrationsOf(dir, all.slice(0, at)))
  const database = new Database(file)
  database.exec('PRAGMA foreign_keys = OFF')
  const sold = database.prepare(
    'insert into "TreatmentStep" ("id", "treatmentId", "position", "name", "stage", "needs", "minutes") ' +
      "values (?, 'one', ?, 'Step', ?, 'clean', '{}')",
  )
  for (const [i, stage] of ['wipe', 'wipe', 'coat', 'wipe', 'finish'].entries()) sold.run(`t${i}`, i, stage)
  const job = database.prepare(
    'insert into "Job" ("id", "number", "customerId", "vehicleId", "status", "dropOffAt", "promisedAt", "handoverAt", "safeAt", "advisedAt", "createdAt") ' +
      "values (?, ?, 'c', 'v', ?, 0, 0, 0, 0, 0, 0)",
  )
  const step = database.prepare(
    'insert into "JobStep" ("id", "jobId", "position", "kind", "name", "stage", "needs", "minutes", "bayId", "startAt", "endAt", "waitMax", "actualStartAt") ' +
      "values (?, ?, ?, 'work', 'Step', ?, 'clean', 30, 'b', 0, 30, ?, ?)",
  )
  const jobs = [
    ['booked', null, null],
    ['booked', 20, null],
    ['inShop', 240, null],
    ['inShop', null, 5],
    ['handedOver', null, null],
  ] as const
  for (const [n, [status, waitMax, begunAt]] of jobs.entries()) {
    job.run(`j${n}`, n, status)
    step.run(`w${n}`, `j${n}`, 0, 'wipe', null, null)
    step.run(`c${n}`, `j${n}`, 1, 'coat', waitMax, begunAt)
  }
  database.close()
  await migrate(file, migrationsOf(dir, all.slice(0, at + 1)))
  const { TreatmentStep: steps = [], JobStep: rows = [] } = readAll(file)
  expect(steps.map(row => [row.nextWithinMin, row.missed])).toEqual([
    [null, null],
    [45, 'again'],
    [null, null],
    [null, null],
    [null, null],
  ])
  const coats = rows.filter(row => row.stage === 'coat')
  expect(coats.map(row => row.waitMax)).toEqual([45, 20, 45, null, null])
  expect(rows.filter(row => row.stage === 'wipe').map(row => row.missed)).toEqual([
    'again',
    'again',
    'again',
    null,
    null,
  ])
})

test('A levelling after a coat becomes part of it; what is called so elsewhere, or uses something, stays as it is', async () => {
  const dir = makeFolder()
  const file = join(dir, 'lustrum.db')
  const at = all.findIndex(name => name.endsWith('_level_with_the_layer'))
  await migrate(file, migrationsOf(dir, all.slice(0, at)))
  const database = new Database(file)
  database.exec('PRAGMA foreign_keys = OFF')
  const step = database.prepare(
    'insert into "TreatmentStep" ("id", "treatmentId", "position", "name", "stage", "needs", "minutes", "productId") ' +
      "values (?, ?, ?, ?, ?, 'clean', '{}', ?)",
  )
  const rows = [
    ['one', 0, 'Coat', 'coat', 'two'],
    ['one', 1, 'Level HIGH SPOTS', 'finish', null],
    ['one', 2, 'Level again', 'finish', null],
    ['two', 0, 'Coat', 'coat', 'two'],
    ['two', 1, 'Level', 'finish', 'cloth'],
    ['three', 0, 'Coat', 'coat', 'two'],
    ['three', 1, 'Dress the trim', 'finish', null],
  ] as const
  for (const [i, row] of rows.entries()) step.run(`s${i}`, ...row)
  database.close()
  await migrate(file, migrationsOf(dir, all.slice(0, at + 1)))
  expect((readAll(file).TreatmentStep ?? []).map(row => row.stage)).toEqual([
    'coat',
    'level',
    'finish',
    'coat',
    'finish',
    'coat',
    'finish',
  ])
})
