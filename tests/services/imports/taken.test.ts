import { beforeEach, describe, expect, it } from 'vitest'
import { beginTake, importStands, stopImporting } from '../../../main/services/imports/importing.ts'
import { listTaken, undoImport } from '../../../main/services/imports/taken.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { everyRow } from '../records/everyRow.ts'
import { testShop } from '../testShop.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { importingEnds } from './ends.ts'
import { checkList, takeList } from './lists.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  await testShop(desk)
})

/** That there was a file, and how it was read, is remembered. */
const everything = () => everyRow(desk, ['DataImport', 'ImportMapping'])

const cars = 'Plate,Owner,Owner phone\nQLM 301,Oda Brandt,212 555 0131\nQLM 302,Wim Alder,\n'
const lists = [
  ['customers', 'Name,Phone,Address\nOda Brandt,212 555 0131,4 Quarry Lane\nWim Alder,,\n'],
  ['vehicles', cars],
  ['coatings', 'Plate,Coating,Date,Renewed on\nKFR 204,Ovrel Two,2024-05-14,2025-11-13\n'],
  ['products', 'Name,Kind,Content\nSlick Foam,wash,16 fl oz\nGlassen,coating,50 ml\n'],
] as const

describe('a list that is taken out again', () => {
  it.each(lists)('leaves the database as it was before: %s', async (kind, text) => {
    const before = everything()
    const { importId } = await takeList(desk, kind, text)
    expect(everything()).not.toEqual(before)
    await undoImport(desk, { id: importId })
    expect(everything()).toEqual(before)
    expect(await desk.store.read.planDue.count()).toBe(await desk.store.read.upkeepPlan.count())
    await expect(undoImport(desk, { id: importId })).rejects.toMatchObject({ code: 'missing' })
    expect(await listTaken(desk)).toMatchObject([{ id: importId, undoneAt: expect.any(Number) }])
  })

  it('keeps, once that was asked about, what was changed or used since, and what that hangs on', async () => {
    const { importId } = await takeList(desk, 'vehicles', cars)
    const [oda] = (await findCustomers(desk, { text: 'oda brandt' })).customers
    const [wim] = (await findCustomers(desk, { text: 'wim alder' })).customers
    await saveCustomer(desk, { ...wim!, note: 'rings before nine' })
    await agree(desk, oda!.vehicles[0]!.id)
    await expect(undoImport(desk, { id: importId })).rejects.toMatchObject({
      code: 'in-use',
      message: expect.stringContaining('2 customers'),
    })
    expect(await desk.store.read.vehicle.count({ where: { plate: 'QLM 302' } })).toBe(1)
    await undoImport(desk, { id: importId, accepted: true })
    expect((await findCustomers(desk, { text: 'wim alder' })).customers).toMatchObject([{ vehicles: [] }])
  })

  it('leaves the plans of a car that a reminder was written about', async () => {
    const { importId } = await takeList(desk, ...lists[2])
    const plan = await desk.store.read.upkeepPlan.findFirstOrThrow({ where: { kind: 'topper' } })
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.upkeepPlan.update({ where: { id: plan.id }, data: { version: 2 } }),
    )
    await undoImport(desk, { id: importId, accepted: true })
    expect(await desk.store.read.upkeepPlan.findMany()).toMatchObject([{ id: plan.id }])
    expect(await desk.store.read.upkeepEntry.count({ where: { planId: plan.id } })).toBe(1)
  })
})

describe('a list that is stopped', () => {
  it('leaves nothing behind', async () => {
    const before = everyRow(desk)
    const text = `Name\n${Array.from({ length: 3_000 }, (_, i) => `Bulk ${i}`).join('\n')}\n`
    const { input } = await checkList(desk, 'customers', text)
    beginTake(desk, input)
    await stopImporting(desk)
    await importingEnds(desk)
    expect(importStands(desk).report?.importId ?? null).toBeNull()
    expect(everyRow(desk)).toEqual(before)
  })
})
