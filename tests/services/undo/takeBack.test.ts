import Database from 'better-sqlite3'
import { beforeEach, expect, test } from 'vitest'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { changeBooking } from '../../../main/services/booking/changeBooking.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { stampOf } from '../../../main/services/desk/desk.ts'
import { history } from '../../../main/services/history/history.ts'
import { cancelJob, promiseAgain } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { noteJob } from '../../../main/services/job/note.ts'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { giveConsent } from '../../../main/services/reminders/consents.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { rowsOf } from './rowsOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })
const rows = () => rowsOf(desk.store.source.file)

test('Each act taken back leaves every row as it was', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  const { id } = job
  const acts: Record<string, () => Promise<unknown>> = {
    booked: () => bookJob(desk, shop, { treatments: ['wash'], vehicle: 1 }),
    moved: async () =>
      moveStay(desk, {
        jobId: id,
        version: (await key(id)).version,
        position: 0,
        bayId: shop.bays['Bay 1']!,
        startAt: job.steps[0]!.startAt + 120,
      }),
    cancelled: async () => cancelJob(desk, { ...(await key(id)), reason: 'sold the car' }),
    arrived: async () => arrive(desk, await key(id)),
  }
  for (const [name, does] of Object.entries(acts)) {
    const before = rows()
    await does()
    expect(rows(), name).not.toEqual(before)
    // Held, then booked: two acts.
    if (name === 'booked') await takeBack(desk, {})
    await takeBack(desk, {})
    expect(rows(), name).toEqual(before)
  }
})

test('Taken back, it says what; put again, it stands, and both are lines of the history', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await cancelJob(desk, { ...(await key(id)), reason: 'sold the car' })
  const cancelled = rows()
  const { words, actId } = await takeBack(desk, {})
  expect(words).toBe('job 1: cancelled, because: sold the car')
  expect((await getJob(desk, { id })).status).toBe('booked')
  await takeBack(desk, { actId: actId! })
  expect(rows()).toEqual(cancelled)
  const { lines } = await history(desk, { entities: ['job'], entityId: id })
  expect(lines.slice(0, 2).map(line => line.words)).toEqual([
    'stands again: “cancelled, because: sold the car”',
    'taken back: “cancelled, because: sold the car”',
  ])
  // What stands again can be taken back again.
  expect((await takeBack(desk, {})).words).toBe('job 1: cancelled, because: sold the car')
})

test('Step by step back, each time the last that stands, and only of this desk', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const other = { ...desk, deskId: 'workshop' }
  await noteJob(desk, { id, words: 'first' })
  await noteJob(desk, { id, words: 'second' })
  await saveCustomer(other, { name: 'Ottilie Farrow', phone: '', email: '', note: '' })
  expect((await takeBack(desk, {})).words).toContain('second')
  expect((await takeBack(desk, {})).words).toContain('first')
  expect((await takeBack(other, {})).words).toContain('Ottilie Farrow')
  await expect(takeBack(other, {})).rejects.toMatchObject({ code: 'nothing' })
})

test('A form filled before is stale after: nobody overwrites what they have not seen', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await promiseAgain(desk, {
    ...(await key(id)),
    promisedAt: (await getJob(desk, { id })).promisedAt + 60,
  })
  const seen = await key(id)
  await takeBack(desk, {})
  await expect(cancelJob(desk, { ...seen, reason: 'sold' })).rejects.toMatchObject({ code: 'stale' })
})

test('What a later act stands on is not taken back before it', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await arrive(desk, await key(id))
  const [arrived] = (await history(desk, { entities: ['job'], entityId: id })).lines
  await startStep(desk, { ...(await key(id)), position: 0 })
  await expect(takeBack(desk, { actId: arrived!.actId! })).rejects.toThrow(
    /"job 1: car arrived .*" is not taken back. Since then: job 1: "Wash" begun .* Take that back first./,
  )
  await takeBack(desk, {})
  await takeBack(desk, { actId: arrived!.actId! })
  expect((await getJob(desk, { id })).status).toBe('booked')
})

test('A place that was given away meanwhile is not taken again', async () => {
  const first = await bookJob(desk, shop, { treatments: ['correction'] })
  await cancelJob(desk, { ...(await key(first.id)), reason: 'sold' })
  const [cancelled] = (await history(desk, { entities: ['job'], entityId: first.id })).lines
  const next = await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  expect(next.steps[0]?.startAt).toBe(first.steps[0]?.startAt)
  const before = rows()
  await expect(takeBack(desk, { actId: cancelled!.actId! })).rejects.toMatchObject({ code: 'taken' })
  expect(rows()).toEqual(before)
})

test('A place that was given back to whom it was taken from is not taken again either', async () => {
  const acts: number[] = []
  const cancels = async (id: string) => {
    await cancelJob(desk, { ...(await key(id)), reason: 'sold' })
    const [line] = (await history(desk, { entities: ['job'], entityId: id })).lines
    acts.push(line!.actId!)
  }
  await cancels((await bookJob(desk, shop, { treatments: ['correction'] })).id)
  await cancels((await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })).id)
  await takeBack(desk, { actId: acts[0]! })
  await expect(takeBack(desk, { actId: acts[1]! })).rejects.toMatchObject({ code: 'taken' })
})

test('A car that was booked anew meanwhile is not booked for the same hours twice', async () => {
  // Washed at eight, polished from nine by Mika; then washed alone at a quarter past nine, by Sal in another bay.
  const first = await bookJob(desk, shop, { treatments: ['correction'] })
  await cancelJob(desk, { ...(await key(first.id)), reason: 'sold' })
  const [cancelled] = (await history(desk, { entities: ['job'], entityId: first.id })).lines
  desk.setNow('2026-04-15T13:10:00Z')
  const away = { fromAt: desk.now(), toAt: desk.now() + 600, reason: 'sick', accepted: true }
  await saveAbsence(desk, { ...away, crewId: shop.crew.Mika! })
  await bookJob(desk, shop, { treatments: ['wash'] })
  const before = rows()
  await expect(takeBack(desk, { actId: cancelled!.actId! })).rejects.toThrow(
    'KFR 204 is here for job 2 already',
  )
  expect(rows()).toEqual(before)
})

test('What was in its way before the act already does not keep it from being taken back', async () => {
  // Two visits of one car; at the first it was left standing until the second was due.
  const first = await bookJob(desk, shop, { treatments: ['wash'] })
  await arrive(desk, await key(first.id))
  await bookJob(desk, shop, { treatments: ['correction'] })
  desk.setNow('2026-04-16T12:00:00Z')
  const treatmentIds = [shop.treatments.twoLayers]
  const { soonest } = await changeOffers(desk, { id: first.id, treatmentIds })
  if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
  const before = rows()
  await changeBooking(desk, { ...(await key(first.id)), treatmentIds, plan: soonest.plan })
  await takeBack(desk, {})
  expect(rows()).toEqual(before)
})

test('What was said outside is not taken back, and says what to do instead', async () => {
  const [vehicle] = await desk.store.read.vehicle.findMany({ where: { id: shop.vehicles[0]! } })
  await giveConsent(desk, {
    customerId: vehicle!.customerId,
    channel: 'call',
    source: 'at the desk',
    wording: 'may be called',
  })
  await expect(takeBack(desk, {})).rejects.toThrow('not taken back but withdrawn')
})

test('After a day nothing is taken back any more', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await noteJob(desk, { id, words: 'asks for a call' })
  const [noted] = (await history(desk, { entities: ['job'], entityId: id })).lines
  desk.setNow('2026-04-16T12:01:00Z')
  // Of a window that was opened the day before.
  await expect(takeBack(desk, { actId: noted!.actId! })).rejects.toMatchObject({ code: 'too-old' })
  await expect(takeBack(desk, {})).rejects.toMatchObject({ code: 'nothing' })
  const { lines } = await history(desk, { entities: ['job'], entityId: id })
  expect(lines.map(line => line.actId)).toEqual(lines.map(() => null))
  await noteJob(desk, { id, words: 'called' })
  expect(await desk.store.read.act.count()).toBe(1)
})

test('Who is erased is not kept in what could be taken back', async () => {
  const { id } = await saveCustomer(desk, { name: 'Ottilie Farrow', phone: '', email: '', note: '' })
  const { version } = await desk.store.read.customer.findUniqueOrThrow({ where: { id } })
  await erasePerson(desk, { id, version, accepted: true })
  const database = new Database(desk.store.source.file, { readonly: true })
  const kept = database.prepare('select group_concat(coalesce(before, after)) from ActRow').pluck().get()
  database.close()
  expect(String(kept)).not.toContain('Ottilie')
  await expect(takeBack(desk, {})).rejects.toMatchObject({ code: 'not-followed' })
})

test('A step finished with what it drew: the ledger keeps both, and the shelf stands as before', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await arrive(desk, await key(id))
  await startStep(desk, { ...(await key(id)), position: 0 })
  const before = rows()
  await finishStep(desk, { ...(await key(id)), position: 0, asPlanned: true })
  await takeBack(desk, {})
  expect(rows()).toEqual(before)
})

test('What changed nothing here is not taken back, but a note is struck', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await noteJob(desk, { id, words: 'asks for a call' })
  await takeBack(desk, {})
  const [line] = (await history(desk, { entities: ['job'], entityId: id })).lines
  expect(line!.words).toBe('taken back: “noted: asks for a call”')
  await desk.store.transact(stampOf(desk), async (_, audit) =>
    audit({ act: 'data packed', entity: 'shop', entityId: '1' }),
  )
  await expect(takeBack(desk, {})).rejects.toMatchObject({ code: 'outside' })
})
