import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { saveContact } from '../../../main/services/records/contacts.ts'
import { getCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import type { MergeInput } from '../../../main/services/records/inputs.ts'
import { mergeCustomers, undoMerge } from '../../../main/services/records/merge.ts'
import { listConsents, saveReach, withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { changeHands } from '../../../main/services/upkeep/changeHands.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { everyRow } from './everyRow.ts'

let desk: TestDesk
let shop: TestShop
let keptId: string
let goneId: string
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
  ;[keptId, goneId] = (await Promise.all(
    [0, 1].map(async i => {
      const where = { id: shop.vehicles[i]! }
      return (await desk.store.read.vehicle.findUniqueOrThrow({ where })).customerId
    }),
  )) as [string, string]
})

const seen = async (id: string) => {
  const { version } = await desk.store.read.customer.findUniqueOrThrow({ where: { id } })
  return { id, version }
}
const all = (side: 'kept' | 'gone') => ({ name: side, phone: side, email: side, postal: side })
const merge = async (take: MergeInput['take'] = all('kept'), kept = keptId, gone = goneId) =>
  mergeCustomers(desk, { kept: await seen(kept), gone: await seen(gone), take })

describe('two entries of one person', () => {
  it('become one with the cars, consent, contacts and address of both, and what was not chosen is noted', async () => {
    await agree(desk, shop.vehicles[1]!, ['email'], 'second@example.com')
    await saveContact(desk, { customerId: goneId, name: 'Wim Alder', role: 'drives it', callFirst: true })
    await saveReach(desk, {
      customerId: goneId,
      language: null,
      zone: null,
      postal: '4 Quarry Lane',
      version: 0,
    })
    const [kept, gone] = [await getCustomer(desk, { id: keptId }), await getCustomer(desk, { id: goneId })]
    await merge({ ...all('kept'), email: 'gone', postal: 'gone' })
    const one = await getCustomer(desk, { id: keptId })
    expect(one).toMatchObject({ name: kept.name, phone: kept.phone, email: 'second@example.com' })
    expect(one.vehicles).toHaveLength(kept.vehicles.length + gone.vehicles.length)
    expect(one.contacts).toMatchObject([{ name: 'Wim Alder', callFirst: true }])
    expect(one.note).toContain(gone.name)
    const consents = await listConsents(desk, { customerId: keptId })
    expect(consents.reach.postal).toBe('4 Quarry Lane')
    expect(consents.states.find(each => each.channel === 'email')?.state?.given).toBe(true)
    expect((await findCustomers(desk, { text: gone.vehicles[0]!.plate })).customers).toMatchObject([
      { id: keptId },
    ])
    expect((await getCustomer(desk, { id: goneId })).archivedAt).not.toBeNull()
  })

  it('keep a withdrawal of either, whoever stays', async () => {
    await agree(desk, shop.vehicles[0]!, ['email'], 'one@example.com')
    desk.setNow('2026-04-16T07:40:00Z')
    await withdrawConsent(desk, {
      customerId: goneId,
      channel: 'all',
      source: 'by telephone',
      wording: 'stop',
    })
    await merge()
    const { states } = await listConsents(desk, { customerId: keptId })
    expect(states.filter(each => each.state?.given)).toEqual([])
  })

  it('are taken apart exactly as they were, whatever was chosen', async () => {
    await agree(desk, shop.vehicles[1]!, ['email', 'letter'], 'second@example.com')
    await saveContact(desk, { customerId: keptId, name: 'Ada Lund', callFirst: true })
    await saveContact(desk, { customerId: goneId, name: 'Wim Alder', callFirst: true })
    const car = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: shop.vehicles[2]! } })
    await changeHands(desk, { vehicleId: car.id, version: car.version, to: { customerId: goneId } })
    const side = fc.constantFrom('kept', 'gone' as const)
    await fc.assert(
      fc.asyncProperty(fc.record({ name: side, phone: side, email: side, postal: side }), async take => {
        const before = everyRow(desk, ['Merge'])
        const { id } = await merge(take)
        expect(everyRow(desk, ['Merge'])).not.toEqual(before)
        await undoMerge(desk, { id })
        expect(everyRow(desk, ['Merge'])).toEqual(before)
      }),
      { numRuns: 8 },
    )
  })

  it('leave a window that shows them as one stale once they are taken apart', async () => {
    const { id } = await merge()
    const { name, version } = await getCustomer(desk, { id: keptId })
    await undoMerge(desk, { id })
    for (let i = 0; i < 3; i++) await saveCustomer(desk, { ...(await seen(keptId)), name: 'Somebody Else' })
    await expect(saveCustomer(desk, { id: keptId, version, name })).rejects.toMatchObject({ code: 'stale' })
  })

  it('keep what was changed since when they are taken apart, and cars that have gone on', async () => {
    const { id } = await merge(all('gone'))
    const saved = await saveCustomer(desk, { ...(await seen(keptId)), name: 'Third Name', phone: null })
    const third = await saveCustomer(desk, { name: 'Oda Brandt' })
    const vehicleId = shop.vehicles[1]!
    const { version } = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
    await changeHands(desk, { vehicleId, version, to: { customerId: third.id } })
    await undoMerge(desk, { id })
    expect(await getCustomer(desk, { id: keptId })).toMatchObject({
      name: 'Third Name',
      version: saved.version + 1,
    })
    expect((await getCustomer(desk, { id: third.id })).vehicles).toMatchObject([{ id: vehicleId }])
  })

  it('are taken apart from the last one back', async () => {
    const first = await merge()
    const third = await saveCustomer(desk, { name: 'Oda Brandt' })
    const second = await merge(all('kept'), third.id, keptId)
    await expect(undoMerge(desk, first)).rejects.toMatchObject({ code: 'merged-since' })
    await undoMerge(desk, second)
    await undoMerge(desk, first)
    await expect(undoMerge(desk, first)).rejects.toMatchObject({ code: 'missing' })
  })

  it('are refused where one was changed meanwhile, is put away, or is the other', async () => {
    const [kept, gone] = [await seen(keptId), await seen(goneId)]
    await expect(mergeCustomers(desk, { kept, gone: kept, take: all('kept') })).rejects.toMatchObject({
      code: 'same',
    })
    await saveCustomer(desk, { ...gone, name: 'Somebody Else' })
    await expect(mergeCustomers(desk, { kept, gone, take: all('kept') })).rejects.toMatchObject({
      code: 'stale',
    })
    await merge()
    await expect(merge()).rejects.toMatchObject({ code: 'missing', field: 'gone' })
  })
})
