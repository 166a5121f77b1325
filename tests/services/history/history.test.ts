import Database from 'better-sqlite3'
import Papa from 'papaparse'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { history, historyChoices } from '../../../main/services/history/history.ts'
import { historyFile } from '../../../main/services/leaving/historyFile.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { archiveVehicle, saveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let customerId: string
let vehicleId: string
beforeAll(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z', 'Mara')
  await testShop(desk)
  desk.setNow('2026-04-20T14:00:00Z')
  customerId = (await saveCustomer(desk, { name: '=Edda Marsh' })).id
  const car = { customerId, plate: 'QLM 311', sizeClass: 'medium', finish: 'gloss' } as const
  vehicleId = (await saveVehicle(desk, car)).id
  desk.setNow('2026-04-21T14:00:00Z')
  await saveVehicle({ ...desk, who: 'Jo' }, { ...car, sizeClass: 'large', id: vehicleId, version: 1 })
  await archiveVehicle(desk, { id: vehicleId, version: 2 })
})
afterAll(() => desk.close())

const words = async (filter: Parameters<typeof history>[1]) =>
  (await history(desk, filter)).lines.map(
    ({ when, who, name, words }) => `${when} · ${who} · ${name} · ${words}`,
  )

describe('the history', () => {
  it('of one thing says who did what when, newest first', async () => {
    expect(await words({ entities: ['vehicle'], entityId: vehicleId })).toEqual([
      'Tue 21 April 10:00 · Mara · QLM 311 · put away',
      'Tue 21 April 10:00 · Jo · QLM 311 · changed the size from medium to large',
      'Mon 20 April 10:00 · Mara · QLM 311 · added: owner =Edda Marsh, size medium, finish gloss, paint unknown, plate QLM 311',
    ])
  })

  it('is narrowed by person, act, kind and days of the shop, one with another', async () => {
    expect(await words({ who: 'Jo' })).toHaveLength(1)
    expect(await words({ act: 'archived' })).toEqual([expect.stringContaining('put away')])
    expect(await words({ fromDate: '2026-04-21' })).toHaveLength(2)
    expect(await words({ fromDate: '2026-04-20', toDate: '2026-04-20' })).toHaveLength(2)
    // 02:00 of the 21st in London is still the 20th in New York.
    desk.setNow('2026-04-22T02:00:00Z')
    await saveCustomer(desk, { name: 'Late Caller' })
    expect(
      await words({ entities: ['customer'], fromDate: '2026-04-21', toDate: '2026-04-21' }),
    ).toHaveLength(1)
    expect(
      await words({ entities: ['customer', 'vehicle'], who: 'Mara', act: 'added', fromDate: '2026-04-20' }),
    ).toHaveLength(3)
    expect(await words({ who: 'nobody' })).toEqual([])
  })

  it('comes in pages that leave nothing out and give nothing twice, however many lines one moment has', async () => {
    const all = await desk.store.read.auditLine.findMany({ orderBy: [{ at: 'desc' }, { id: 'desc' }] })
    const seen: string[] = []
    for (let cursor: { at: number; id: string } | null = null; ; ) {
      const page = await history(desk, { cursor, limit: 3 })
      expect(page.lines.length).toBeLessThanOrEqual(3)
      seen.push(...page.lines.map(({ id }) => id))
      cursor = page.nextCursor
      if (cursor === null) break
    }
    expect(seen).toEqual(all.map(({ id }) => id))
    const { length } = all
    expect((await history(desk, { limit: length })).nextCursor).toBe(null)
  })

  it('offers each person, act and kind there is once', async () => {
    const lines = await desk.store.read.auditLine.findMany()
    const each = (of: 'who' | 'act' | 'entity') => [...new Set(lines.map(line => line[of]))].sort()
    expect(await historyChoices(desk)).toEqual({
      who: each('who'),
      acts: each('act'),
      entities: each('entity'),
    })
  })

  it('is read by an index, whatever it is asked for', () => {
    const database = new Database(desk.store.source.file, { readonly: true })
    const plan = (where: string) =>
      (
        database
          .prepare(
            `explain query plan select * from AuditLine where ${where} order by at desc, id desc limit 50`,
          )
          .all() as { detail: string }[]
      )
        .map(({ detail }) => detail)
        .join()
    for (const where of [
      'true',
      "who = 'a'",
      "act = 'a'",
      "entity = 'a'",
      "entity = 'a' and entityId = 'b'",
      'at <= 5 and (at < 5 or id < 6)',
    ])
      expect(plan(where)).toContain('USING INDEX')
    database.close()
  })

  it('is a list for a spreadsheet too, with formulas defused', async () => {
    const file = await historyFile(desk, { entities: ['vehicle', 'customer'], fromDate: '2026-04-20' })
    expect(file.name).toBe('history 2026-04-21.csv')
    const text = await new Response(file.bytes as BodyInit).text()
    const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
    expect(data).toHaveLength(5)
    expect(data.at(-1)).toEqual({
      When: '2026-04-20T10:00-04:00',
      Who: 'Mara',
      Kind: 'customer',
      Of: "'=Edda Marsh",
      Id: customerId,
      What: 'added: name =Edda Marsh, kind person',
    })
  })

  it('goes by the time of an act, also where a clock was set back between two', async () => {
    desk.setNow('2026-04-13T14:00:00Z')
    await saveCustomer({ ...desk, who: 'Ilse' }, { name: 'Saved later' })
    desk.setNow('2026-04-12T14:00:00Z')
    await saveCustomer({ ...desk, who: 'Ilse' }, { name: 'With the clock set back' })
    expect(await words({ who: 'Ilse' })).toEqual([
      expect.stringContaining('Saved later'),
      expect.stringContaining('With the clock set back'),
    ])
  })
})
