import { beforeEach, describe, expect, it } from 'vitest'
import { ownPace } from '../../../main/services/desk/beside.ts'
import {
  approveAll,
  approveMessage,
  refuseMessage,
  sentByHand,
} from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { recordOutcome } from '../../../main/services/reminders/outcomes.ts'
import {
  batchWritten,
  beginBatch,
  prepareBatch,
  stopBatch,
  writeOne,
} from '../../../main/services/reminders/prepare.ts'
import { dueForReminder } from '../../../main/services/reminders/wanted.ts'
import { turnsDuring } from '../../turns.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { change, duePlan, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
beforeEach(async () => {
  ;({ desk, shop } = await reminderDesk(1))
})

const car = (i = 0) => shop.vehicles[i]!

/** A text written, approved and sent from the desk's phone. */
async function textSent() {
  await prepareBatch(desk)
  await approveAll(desk)
  const [text] = (await batch(desk)).messages
  return sentByHand(desk, text!)
}

describe('a reminder is due', () => {
  it('so many days before its visit, not a day earlier', async () => {
    await agree(desk, car())
    // 21 days before 7 May 2026 is 16 April.
    await duePlan(desk, car(), '2026-05-07')
    expect((await dueForReminder(desk)).wanted).toEqual([])
    desk.setNow('2026-04-16T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toMatchObject([{ channel: 'email' }])
  })

  it('again so many days after the last by the shop’s date, which is not that of Greenwich', async () => {
    await agree(desk, car(), ['text'])
    await duePlan(desk, car())
    await change(desk, { toMin: 1440, againDays: 10 })
    // 21:30 on 15 April in New York; in Greenwich the 16th has begun.
    desk.setNow('2026-04-16T01:30:00Z')
    await textSent()
    desk.setNow('2026-04-24T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toEqual([])
    desk.setNow('2026-04-25T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toMatchObject([{ visit: { reminder: { tryNo: 1 } } }])
  })

  it('on the day the owner named, and not before', async () => {
    await agree(desk, car(), ['text'])
    await duePlan(desk, car())
    const { id } = await textSent()
    await recordOutcome(desk, { messageId: id, outcome: 'later', laterOn: '2026-05-20' })
    desk.setNow('2026-05-19T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toEqual([])
    desk.setNow('2026-05-20T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toHaveLength(1)
  })

  it('on that day too where the owner called before it went out', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await prepareBatch(desk)
    const [draft] = (await batch(desk)).messages
    await recordOutcome(desk, { messageId: draft!.id, outcome: 'later', laterOn: '2026-05-20' })
    desk.setNow('2026-05-19T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toEqual([])
    desk.setNow('2026-05-20T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toHaveLength(1)
  })

  it('by another way the second time, where the owner agrees to one', async () => {
    await agree(desk, car(), ['call', 'text'])
    await duePlan(desk, car())
    await textSent()
    desk.setNow('2026-04-25T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toMatchObject([{ channel: 'call' }])
  })

  it('one an owner at a time, and for the other it says why', async () => {
    await agree(desk, car())
    await duePlan(desk, car(), '2026-04-28')
    await duePlan(desk, car(), '2026-04-29')
    const { wanted, notWanted } = await dueForReminder(desk)
    expect(wanted.map(each => each.visit.dueOn)).toEqual(['2026-04-28'])
    expect(notWanted).toMatchObject([
      { visit: { ruleOn: '2026-04-29' }, why: expect.stringContaining('one at a time') },
    ])
    await prepareBatch(desk)
    expect((await dueForReminder(desk)).wanted).toEqual([])
  })

  it('no more once the desk refused it', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await prepareBatch(desk)
    const [draft] = (await batch(desk)).messages
    await refuseMessage(desk, draft!)
    desk.setNow('2026-04-27T14:00:00Z')
    expect((await dueForReminder(desk)).wanted).toEqual([])
  })
})

describe('the morning’s reminders', () => {
  /** Three owners, each with a visit that is due. */
  async function threeDue() {
    for (const vehicleId of shop.vehicles.slice(0, 3)) {
      await agree(desk, vehicleId)
      await duePlan(desk, vehicleId)
    }
  }

  it('are written with turns for everybody else between them', async () => {
    await threeDue()
    let most = 0
    const pace = { ...ownPace(), turn: async () => Boolean(++most) }
    expect(await prepareBatch(desk, pace)).toMatchObject({ written: 3, stopped: false })
    expect(pace).toMatchObject({ done: 3, total: 3 })
    // One more while the plans were worked out.
    expect(most).toBe(4)
  })

  it('are written beside the desk, which is told how far they are', async () => {
    await threeDue()
    beginBatch(desk)
    expect((await batch(desk)).writing.working).not.toBeNull()
    expect(await turnsDuring(batchWritten(desk))).toBeGreaterThan(3)
    const { writing, drafts, waiting, messages } = await batch(desk)
    expect(writing).toMatchObject({ working: null, result: { written: 3 }, failed: null })
    expect({ drafts, waiting, messages: messages.length }).toEqual({ drafts: 3, waiting: 0, messages: 3 })
  })

  it('stop where they are when asked, and what was written stands', async () => {
    await threeDue()
    let turns = 0
    const written = await prepareBatch(desk, { ...ownPace(), turn: async () => ++turns < 4 })
    expect(written).toMatchObject({ written: 2, stopped: true })
    expect((await batch(desk)).drafts).toBe(2)
    beginBatch(desk)
    await stopBatch(desk)
    expect((await batch(desk)).writing.result).toMatchObject({ stopped: true })
  })
})

describe('one written because the desk says so', () => {
  it('is refused while another is under way, and may be written long before its time', async () => {
    await agree(desk, car())
    const planId = await duePlan(desk, car(), '2026-11-10')
    const visit = { planId, ruleOn: '2026-11-10', channel: 'email' } as const
    await writeOne(desk, visit)
    await expect(writeOne(desk, visit)).rejects.toMatchObject({ code: 'stale' })
    const [draft] = (await batch(desk)).messages
    await approveMessage(desk, draft!)
    await expect(writeOne(desk, visit)).rejects.toMatchObject({ code: 'stale' })
  })

  it('is refused where the plan has no such visit', async () => {
    const planId = await duePlan(desk, car())
    await expect(writeOne(desk, { planId, ruleOn: '2026-04-27', channel: 'email' })).rejects.toMatchObject({
      field: 'ruleOn',
    })
  })
})
