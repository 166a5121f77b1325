import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { migrate } from '../../../main/store/migrate.ts'
import { openStore } from '../../../main/store/store.ts'
import { makeFolder } from '../openDatabase.ts'
import { fillEmptyTables, lookOver, type Row, type Rows, readAll, type Value } from './rows.ts'
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
  reading_imports: { Reading: { importId: () => '' } },
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
