import { beforeEach, describe, expect, it } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import { holdPlace, releasePlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { messageViews } from '../../../main/services/reminders/messages.ts'
import { prepareBatch, writeOne } from '../../../main/services/reminders/prepare.ts'
import { writeReminder } from '../../../main/services/reminders/writeReminder.ts'
import { getVisit } from '../../../main/services/upkeep/plans.ts'
import { agree, iso } from '../upkeep/coatedCar.ts'
import { change, duePlan, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
beforeEach(async () => {
  // No mail is sent here.
  ;({ desk, shop } = await reminderDesk(1))
})

const visit = { ruleOn: '2026-04-28' }
const held = () => desk.store.read.job.findMany({ where: { status: 'held' }, orderBy: { dropOffAt: 'asc' } })

async function due(i = 0): Promise<string> {
  await agree(desk, shop.vehicles[i]!, ['email'], `owner${i}@example.com`)
  return duePlan(desk, shop.vehicles[i]!)
}

const written = async () => {
  const rows = await desk.store.read.message.findMany()
  return messageViews(desk.store.read, desk.now(), rows)
}

describe('the times a reminder proposes', () => {
  it('are held until the shop closes on a day it is open', async () => {
    await due()
    // Four days after Wednesday 15 April 2026 is a Sunday, on which the shop is closed.
    await change(desk, { holdDays: 4 })
    await prepareBatch(desk)
    const [message] = await written()
    expect(message!.slots.map(slot => iso(slot.heldUntilAt))).toEqual([
      '2026-04-20T22:00:00Z',
      '2026-04-20T22:00:00Z',
    ])
    expect(message!.body).toContain('Monday, April 20')
    expect((await held()).map(job => iso(job.heldUntilAt!))).toEqual([
      '2026-04-20T22:00:00Z',
      '2026-04-20T22:00:00Z',
    ])
  })

  it('lie two days and more apart, from the due day on, and are what a visit of its kind takes', async () => {
    await due()
    await prepareBatch(desk)
    const [first, second] = await held()
    expect(iso(first!.dropOffAt).slice(0, 10)).toBe('2026-04-28')
    expect(second!.dropOffAt - first!.handoverAt).toBeGreaterThan(1440)
    const sold = await desk.store.read.jobTreatment.findMany({ where: { jobId: first!.id } })
    expect(sold.map(each => each.treatmentId)).toEqual([shop.treatments.wash])
  })

  it('pass over the days the car is here anyway', async () => {
    await due()
    const wish = {
      sizeClass: 'medium',
      condition: 'good',
      treatmentIds: [shop.treatments.twoLayers],
      askedDate: '2026-04-28',
    } as const
    const { askedDay } = await offers(desk, { ...wish, treatmentIds: [...wish.treatmentIds] })
    if (!askedDay.feasible) throw new Error('the shop has room')
    const other = await holdPlace(desk, {
      vehicleId: shop.vehicles[0]!,
      condition: 'good',
      treatmentIds: [shop.treatments.twoLayers],
      plan: askedDay.plan,
      holdMin: 30 * 1440,
    })
    await prepareBatch(desk)
    const [message] = await written()
    expect(message!.slots).toHaveLength(2)
    for (const slot of message!.slots) expect(slot.dropOffAt).toBeGreaterThanOrEqual(askedDay.handoverAt)
    await releasePlace(desk, { jobId: other.jobId, version: other.version })
  })
})

describe('a reminder', () => {
  it('that comes to nothing holds no place', async () => {
    const planId = await due()
    const seen = await getVisit(desk, { planId, ...visit })
    await withdrawConsent(desk, {
      customerId: seen.customerId,
      channel: 'email',
      source: 'telephone',
      wording: 'no more',
    })
    await expect(writeReminder(desk, seen, 'email')).rejects.toMatchObject({ code: 'no-consent' })
    await expect(writeOne(desk, { planId, ...visit, channel: 'letter' })).rejects.toMatchObject({
      code: 'no-consent',
    })
    expect(await held()).toEqual([])
  })

  it('is written once, whichever of two desks is faster', async () => {
    const planId = await due()
    const seen = await getVisit(desk, { planId, ...visit })
    const both = await Promise.allSettled([
      writeReminder(desk, seen, 'email'),
      writeReminder(desk, seen, 'email'),
    ])
    expect(both.find(each => each.status === 'rejected')?.reason).toMatchObject({
      code: 'stale',
      field: 'ruleOn',
    })
    expect(await written()).toHaveLength(1)
    expect(await held()).toHaveLength(2)
  })

  it('finds other times where another desk takes those it found', async () => {
    const [mine, theirs] = [await due(0), await due(1)]
    const rival = await getVisit(desk, { planId: theirs, ...visit })
    let first = true
    // The other desk comes between the look for times and their being held.
    const transact: typeof desk.store.transact = async (stamp, work) => {
      if (first) {
        first = false
        await writeReminder(desk, rival, 'email')
      }
      return desk.store.transact(stamp, work)
    }
    const slow = { ...desk, store: { ...desk.store, transact } }
    await writeReminder(slow, await getVisit(desk, { planId: mine, ...visit }), 'email')
    expect((await written()).map(each => each.slots.length)).toEqual([2, 2])
    const places = (await held()).map(job => job.dropOffAt)
    expect(new Set(places).size).toBe(4)
  })

  it('is not written while the last one waits, nor from a view older than the last one', async () => {
    const planId = await due()
    const before = await getVisit(desk, { planId, ...visit })
    await writeReminder(desk, before, 'email')
    const seen = await getVisit(desk, { planId, ...visit })
    const state = (to: string) =>
      desk.store.transact({ who: 'test', at: desk.now() }, tx =>
        tx.message.updateMany({ data: { state: to } }),
      )
    const again = (view: typeof seen) => writeReminder(desk, view, 'email')
    for (const waiting of ['draft', 'approved', 'sending', 'failed']) {
      await state(waiting)
      await expect(again(seen)).rejects.toMatchObject({ code: 'stale', field: 'ruleOn' })
    }
    await state('sent')
    await expect(again(before)).rejects.toMatchObject({ code: 'stale', field: 'ruleOn' })
    await again(seen)
    expect((await written()).map(each => each.tryNo).sort()).toEqual([1, 2])
  })

  it('gives up where its times are taken three times over', async () => {
    await due(0)
    const seen = await getVisit(desk, { planId: await due(1), ...visit })
    let looks = 0
    const transact: typeof desk.store.transact = () => {
      looks++
      return Promise.reject(new Refusal('stale', 'plan', null, 'taken again'))
    }
    await expect(
      writeReminder({ ...desk, store: { ...desk.store, transact } }, seen, 'email'),
    ).rejects.toMatchObject({ code: 'stale', field: 'plan' })
    expect(looks).toBe(3)
  })

  it('is not written with a template of another channel, and says so', async () => {
    const planId = await due()
    await expect(
      writeOne(desk, { planId, ...visit, channel: 'email', templateId: 'reminder-letter' }),
    ).rejects.toMatchObject({ field: 'templateId' })
    expect(await held()).toEqual([])
  })
})
