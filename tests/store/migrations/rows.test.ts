import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { migrate } from '../../../main/store/migrate.ts'
import { openStore } from '../../../main/store/store.ts'
import { makeFolder } from '../openDatabase.ts'
import { fillEmptyTables, lookOver, mark, type Row, type Rows, readAll, type Value } from './rows.ts'
import { migrationsOf } from './versions.ts'

/**
 * What a migration makes of the rows it finds, by its words, table and column: every column that is new to a table with
 * rows, and every column or table whose old rows do not stand there afterwards as they were. All else is kept as it was.
 */
const changes: Record<string, Record<string, Record<string, (before: Row) => Value>>> = {
  count_edits: {
    BayClosure: { version: () => 1 },
    CrewAbsence: { version: () => 1 },
    HoursException: { version: () => 1 },
  },
  planned_starts: { JobStep: { plannedAt: before => before.startAt! } },
  planned_ends: {
    Job: { plannedHandoverAt: before => before.handoverAt! },
    JobStep: { plannedEndAt: before => before.endAt! },
  },
  // Meant as an empty list; empty_draws puts it right.
  shelf: { TreatmentStep: { draws: () => '' } },
  shelf_plans: { PurchaseOrder: { promisedOn: () => null } },
  empty_draws: { TreatmentStep: { draws: () => '[]' } },
  treatment_needs_two_people: { Treatment: { needsTwoPeople: () => 0 } },
  // No product of these rows is of a kind the shop knows; what becomes of those that are has a test of its own.
  holds_up_bookings: { ShelfProduct: { holdsUpBookings: () => 0 } },
  coating_family: { Product: { family: () => 'paint' } },
  reading_imports: { Reading: { importId: () => '' } },
  // What becomes of a cure profile has a test of its own: those of these rows say nothing.
  windows_by_the_panel: { Shop: { promisesChanged: () => 1 } },
  // No row here is a wipe; what becomes of one has a test of its own.
  next_within: {
    TreatmentStep: { nextWithinMin: () => null, missed: () => null, missedMin: () => null },
    JobStep: { missed: () => null, missedMin: () => null, missedReason: () => null },
  },
  bay_offers: { Bay: { offers: () => '[]' }, TreatmentStep: { asks: () => '[]' } },
  // Looked at once: whether it was clogged, nobody knows.
  second_look: { Inspection: { panels: () => null, secondLook: () => 0 } },
  keep_dry: {
    Job: { coveredAt: () => null, coveredBy: () => null, outsideC: () => null },
    Shop: { outsideUsual: () => null },
  },
  // What was thrown away before anybody was asked: nobody knows why.
  discard_reasons: { StockMove: { discard: () => null } },
  // No bottle was mixed here before it could be said.
  batches: { Lot: { mixedFrom: () => null, waterParts: () => null } },
  // Whoever was on a step was there for the whole of it.
  help_inside_a_step: {
    JobStep: { help: () => null },
    JobStepCrew: { helps: () => 0 },
    TreatmentStep: { help: () => null },
  },
  // Every car was alike all over, and sold whole.
  panels_and_scope: {
    Vehicle: { panels: () => null },
    Product: { finishes: () => null },
    JobTreatment: { scope: () => 'whole', share: () => 1, leftOut: () => '' },
  },
  // There was no other language before.
  shop_language: { Shop: { language: () => 'en' } },
  // Every shop wrote as is usual in its country.
  shop_formats: { Shop: { clockHours: () => null, dateOrder: () => null, weekBegins: () => null } },
  // No act was followed, nobody had agreed when to fetch a car, and no fee was asked for.
  otherwise_changes: {
    AuditLine: { actId: () => null },
    Job: { fetchAt: () => null },
    MoneyRules: { noShowMinor: () => 0, keptDayMinor: () => 0 },
  },
  // What was written before names times that nobody noted.
  words_say_times: {
    JobWords: { saysDropOffAt: () => null, saysPromisedAt: () => null, saysReadyAt: () => null },
  },
  // Nothing was ticked off before it could be said.
  car_checks: { Treatment: { checks: () => '[]' } },
  // Everybody was a person without tags, and nobody had said what lies over a colour.
  people_and_imports: {
    Customer: { kind: () => 'person', tags: () => '[]' },
    OwnerReach: { country: () => null },
    Vehicle: { paint: () => 'unknown' },
  },
  // No coat was taken off as a step of its own, and nobody was asked about a life before.
  taken_off_and_kept: { JobStep: { takesOff: () => 0 }, ShelfProduct: { lifeKeptAt: () => null } },
  // No deposit was asked for, everybody paid tax, and everything bore the usual rate.
  money_and_invoices: {
    Job: { depositMinor: () => 0, taxExempt: () => '' },
    Treatment: { taxKey: () => '' },
  },
  // Paint in any condition cost the same.
  carried_and_reverse_charge: { Job: { taxReversed: () => 0 }, Invoice: { carriedMinor: () => 0 } },
  dearer_by_condition: { MoneyRules: { wornPercent: () => '0', heavyPercent: () => '0' } },
  // Everybody was of the shop.
  lent_and_outside: { CrewMember: { noticeDays: () => 0 } },
  // Nothing was pinned before it could be.
  job_pinned: { Job: { pinned: () => 0 } },
  // Everything was booked as it was written.
  effort: { Job: { stretch: () => 1 } },
  // Of each container these rows hold one move, and no place was let go.
  read_less: {
    Lot: {
      leftCenti: before => Number(before.number) - mark('Lot', 'number') + mark('StockMove', 'centi'),
    },
  },
}

const all = readdirSync(migrationsDir).sort()

/** The old rows as the migration should leave them. */
function expected(before: Rows, words: string): Rows {
  return Object.fromEntries(
    Object.entries(before).map(([table, rows]) => {
      const changed = Object.entries(changes[words]?.[table] ?? {})
      return [
        table,
        rows.map(row => ({ ...row, ...Object.fromEntries(changed.map(([name, of]) => [name, of(row)])) })),
      ]
    }),
  )
}

describe('each migration', () => {
  it('keeps every row of every table, says what it adds, and leaves guards and links whole', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    await migrate(file, migrationsOf(dir, all.slice(0, 1)))
    for (const [index, name] of all.entries()) {
      if (index === 0) continue
      fillEmptyTables(file)
      const before = readAll(file)
      const { guards, faults } = lookOver(file)
      expect(faults, `before ${name}`).toEqual([])
      for (const rows of Object.values(before)) expect(rows).toHaveLength(2)
      expect(await migrate(file, migrationsOf(dir, all.slice(0, index + 1)))).toEqual([name])
      const after = readAll(file)
      const old = Object.fromEntries(Object.keys(before).map(table => [table, after[table]]))
      expect(old, name).toEqual(expected(before, name.replace(/^\d+_/, '')))
      const now = lookOver(file)
      expect(now.faults, `after ${name}`).toEqual([])
      expect(now.guards, name).toEqual(expect.arrayContaining(guards))
    }
  })

  it.each([
    ['coating', 'consumable', [1, 0]],
    ['pad', 'topper', [0, 1]],
  ])(
    'marks coatings and toppers as holding up a booking, and nothing else: %s, %s',
    async (one, other, marks) => {
      const dir = makeFolder()
      const file = join(dir, 'lustrum.db')
      const at = all.findIndex(name => name.endsWith('_holds_up_bookings'))
      await migrate(file, migrationsOf(dir, all.slice(0, at)))
      fillEmptyTables(file)
      const database = new Database(file)
      for (const [i, { id }] of (readAll(file).Product ?? []).entries())
        database.prepare('update "Product" set "kind" = ? where "id" = ?').run([one, other][i], id)
      database.close()
      await migrate(file, migrationsOf(dir, all.slice(0, at + 1)))
      const { ShelfProduct: marked = [] } = readAll(file)
      expect(marked.map(row => row.holdsUpBookings)).toEqual(marks)
    },
  )

  it('keeps a topper’s times where a data sheet gave them, with the toppers put on the coating', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    const at = all.findIndex(name => name.endsWith('_windows_by_the_panel'))
    await migrate(file, migrationsOf(dir, all.slice(0, at)))
    const sources = (source: string) => ({
      topperMin: source,
      topperAdvisedMin: 'common practice',
      topperMaxMin: source,
    })
    const profile = (source: string) =>
      JSON.stringify({
        tackFreeMin: 60,
        topperMin: 90,
        topperAdvisedMin: 720,
        topperMaxMin: 180,
        sources: { tackFreeMin: source, ...sources(source) },
      })
    const database = new Database(file)
    database.exec('PRAGMA foreign_keys = OFF')
    const product = database.prepare(
      'insert into "Product" ("id", "name", "kind", "cureProfile") values (?, ?, ?, ?)',
    )
    product.run('sheet', 'Sheet', 'coating', profile('data sheet'))
    product.run('alone', 'Alone', 'coating', profile('data sheet'))
    product.run('silent', 'Silent', 'coating', profile('common practice'))
    product.run('veil', 'Veil', 'topper', profile('data sheet'))
    product.run('glow', 'Glow', 'topper', profile('common practice'))
    product.run('foam', 'Foam', 'wash', null)
    const step = database.prepare(
      'insert into "TreatmentStep" ("id", "treatmentId", "position", "name", "stage", "needs", "minutes", "productId") ' +
        "values (?, 'one', ?, 'Step', ?, 'clean', '{}', ?)",
    )
    step.run('a', 0, 'coat', 'sheet')
    step.run('b', 1, 'topper', 'veil')
    database.close()
    await migrate(file, migrationsOf(dir, all.slice(0, at + 1)))
    const { Product: products = [] } = readAll(file)
    const after = Object.fromEntries(
      products.map(({ id, cureProfile }) => [
        id,
        cureProfile === null ? null : JSON.parse(String(cureProfile)),
      ]),
    )
    const kept = { tackFreeMin: 60, windowRows: [] }
    const topper = { minMin: 90, advisedMin: 90, maxMin: 180 }
    expect(after).toEqual({
      sheet: { ...kept, topper: { ...topper, productIds: ['veil'] }, sources: { tackFreeMin: 'data sheet' } },
      alone: {
        ...kept,
        topper: { ...topper, productIds: ['veil', 'glow'] },
        sources: { tackFreeMin: 'data sheet' },
      },
      silent: { ...kept, topper: null, sources: { tackFreeMin: 'common practice' } },
      veil: { ...kept, topper: null, sources: { tackFreeMin: 'data sheet' } },
      glow: { ...kept, topper: null, sources: { tackFreeMin: 'common practice' } },
      foam: null,
    })
  })

  it('narrows the humidity of common practice, and keeps what a sheet gave or somebody typed', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    const at = all.findIndex(name => name.endsWith('_humidity_by_practice'))
    await migrate(file, migrationsOf(dir, all.slice(0, at)))
    const database = new Database(file)
    const product = database.prepare(
      'insert into "Product" ("id", "name", "kind", "cureProfile") values (?, ?, ?, ?)',
    )
    const profile = (source: string, minPercent: number) =>
      JSON.stringify({ humidity: { minPercent, maxPercent: 80 }, sources: { humidity: source } })
    product.run('a', 'A', 'coating', profile('common practice', 20))
    product.run('b', 'B', 'coating', profile('data sheet', 20))
    product.run('c', 'C', 'coating', profile('common practice', 30))
    product.run('d', 'D', 'wash', null)
    database.close()
    await migrate(file, migrationsOf(dir, all.slice(0, at + 1)))
    const { Product: products = [] } = readAll(file)
    expect(products.map(({ cureProfile }) => JSON.parse(String(cureProfile))?.humidity ?? null)).toEqual([
      { minPercent: 40, maxPercent: 65 },
      { minPercent: 20, maxPercent: 80 },
      { minPercent: 30, maxPercent: 80 },
      null,
    ])
  })

  it('leaves rows that the app reads', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    await migrate(file, migrationsOf(dir, all.slice(0, 1)))
    fillEmptyTables(file)
    const tables = Object.keys(readAll(file))
    const store = await openStore(file, { dir: migrationsDir })
    for (const table of tables) {
      const model = table[0]!.toLowerCase() + table.slice(1)
      const reader = Reflect.get(store.read, model) as { findMany(): Promise<unknown[]> }
      expect(await reader.findMany(), table).toHaveLength(2)
    }
    await store.close()
  })

  it('is asked for nothing that is not a migration', () => {
    const words = all.map(name => name.replace(/^\d+_/, ''))
    expect(Object.keys(changes).filter(name => !words.includes(name))).toEqual([])
  })
})
