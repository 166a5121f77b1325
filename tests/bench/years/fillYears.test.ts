import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { owedRows } from '../../../main/store/owedRows.ts'
import { openStore, type Store } from '../../../main/store/store.ts'
import { fillYears, yearsNowAt } from './fillYears.ts'

const files = { dir: migrationsDir }
let dir: string
let file: string
let store: Store
beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'lustrum-years-'))
  file = join(dir, 'lustrum.db')
  await fillYears(file, files, { years: 1, lanes: 1, pastLanes: 2, ownersAYear: 120 })
  store = await openStore(file, files)
}, 120_000)
afterAll(async () => {
  await store.close()
  rmSync(dir, { recursive: true, force: true })
})

describe('a generated shop of one year', () => {
  it('has a year of finished visits, with what they drew and left behind', async () => {
    const { read } = store
    const [first] = await read.job.findMany({ orderBy: { dropOffAt: 'asc' }, take: 1 })
    expect(first?.dropOffAt).toBeLessThan(yearsNowAt - 350 * 1440)
    expect(await read.job.count({ where: { status: 'handedOver' } })).toBeGreaterThan(300)
    expect(await read.job.count({ where: { status: 'lapsed' } })).toBeGreaterThan(0)
    // What was released draws nothing any more, as where the app releases it.
    expect(await read.stepDraw.count({ where: { job: { status: 'lapsed' } } })).toBe(0)
    // Each hold that came to nothing says when it was made and what became of it.
    for (const [status, act] of [
      ['lapsed', 'lapsed'],
      ['cancelled', 'released'],
    ] as const) {
      const dead = await read.job.findMany({ where: { status, id: { startsWith: 'years-' } } })
      expect(dead.length, status).toBeGreaterThan(0)
      const lines = await read.auditLine.findMany({ where: { entityId: { in: dead.map(job => job.id) } } })
      expect(lines.filter(line => line.act === 'held').length).toBe(dead.length)
      expect(lines.filter(line => line.act === act).length).toBe(dead.length)
      expect(lines.length).toBe(2 * dead.length)
    }
    for (const table of ['layer', 'upkeepPlan', 'upkeepEntry', 'message', 'conditionCheck'] as const) {
      const counted = read[table] as { count(): Promise<number> }
      expect(await counted.count(), table).toBeGreaterThan(100)
    }
  })

  it('bills every visit, numbered in turn without a gap, and leaves a few unpaid', async () => {
    const { read } = store
    const invoices = await read.invoice.findMany({
      where: { kind: 'invoice', jobId: { startsWith: 'years-' } },
      orderBy: [{ series: 'asc' }, { number: 'asc' }],
      include: { lines: true },
    })
    const visits = await read.job.count({ where: { status: 'handedOver', id: { startsWith: 'years-' } } })
    expect(invoices.length).toBe(visits)
    expect(invoices.map(each => each.number)).toEqual(invoices.map((_, i) => i + 1))
    for (const [i, each] of invoices.entries())
      expect(each.issuedAt).toBeGreaterThanOrEqual(invoices[i - 1]?.issuedAt ?? 0)
    for (const { lines, withoutTaxMinor } of invoices)
      expect(lines.reduce((sum, line) => sum + line.netMinor - line.allowanceMinor, 0)).toBe(withoutTaxMinor)
    const owed = await owedRows(read)
    const open = owed.filter(each => each.jobId.startsWith('years-'))
    expect(open.length).toBeGreaterThan(0)
    expect(open.length).toBeLessThan(visits / 50)
    expect(open.every(each => each.owedMinor > 0)).toBe(true)
    expect(await read.quote.count({ where: { status: 'booked', jobId: { startsWith: 'years-' } } })).toBe(
      Math.ceil(visits / 5),
    )
  })

  it('never has a bay, a person or a car at two places at once', () => {
    const db = new Database(file, { readonly: true })
    // A hold keeps its bay only until its car is moved; work is what two cars can never share.
    const twice = (who: string, join = '') =>
      db
        .prepare(
          `select count(*) as n from (
            select s.startAt, lag(s.endAt) over (partition by ${who} order by s.startAt, s.endAt) as beforeEndAt
            from JobStep s join Job j on j.id = s.jobId ${join}
            where s.kind = 'work' and j.status in ('handedOver', 'inShop', 'booked')
          ) where startAt < beforeEndAt`,
        )
        .get() as { n: number }
    expect(twice('s.bayId').n).toBe(0)
    expect(twice('c.crewId', 'join JobStepCrew c on c.stepId = s.id').n).toBe(0)
    expect(twice('j.vehicleId').n).toBe(0)
    db.close()
  })

  it('keeps every key, and no container below nothing', () => {
    const db = new Database(file, { readonly: true })
    expect(db.pragma('foreign_key_check')).toEqual([])
    const below = db.prepare('select lotId from StockMove group by lotId having sum(centi) < 0').all()
    expect(below).toEqual([])
    db.close()
  })
})
