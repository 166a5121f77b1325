import { beforeEach, describe, expect, it } from 'vitest'
import { getJob } from '../../../main/services/job/jobView.ts'
import {
  approveAll,
  approveMessage,
  editMessage,
  refuseMessage,
} from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { type MailDesk, mailDesk } from './mailDesk.ts'
import { duePlan, message } from './reminderDesk.ts'

let server: MailDesk['server']
let desk: MailDesk['desk']
let car: MailDesk['car']
beforeEach(async () => {
  ;({ server, desk, car } = await mailDesk())
})

describe('the morning batch', () => {
  it('writes to owners who agreed, with two real times held, and says why to nobody else', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await duePlan(desk, car(1))
    expect(await prepareBatch(desk)).toMatchObject({
      written: 1,
      notWritten: [{ customerName: 'Toma Birk', why: expect.stringContaining('not agreed') }],
    })
    const { messages, lawNote } = await batch(desk)
    expect(messages).toMatchObject([
      { state: 'draft', channel: 'email', address: 'owner@example.com', unfilled: [], tryNo: 1 },
    ])
    expect(lawNote).toContain('local law')
    const slots = messages[0]!.slots
    expect(slots).toHaveLength(2)
    for (const slot of slots) {
      expect(slot.state).toBe('held')
      // Held to an evening five days on, and free again before it would be needed.
      expect(slot.heldUntilAt).toBeLessThan(slot.dropOffAt)
      expect(messages[0]!.body).toContain(slot.words)
      const job = await getJob(desk, { id: slot.jobId })
      expect(job).toMatchObject({ status: 'held' })
    }
    expect(slots[0]!.handoverAt).toBeLessThanOrEqual(slots[1]!.dropOffAt)
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
  })

  it('is reviewed one by one: one edited, one refused, the rest approved as a whole', async () => {
    for (const i of [0, 1, 2]) {
      await agree(desk, car(i), ['email'], `owner${i}@example.com`)
      await duePlan(desk, car(i))
    }
    await prepareBatch(desk)
    const [first, second, third] = (await batch(desk)).messages
    const edited = await editMessage(desk, {
      ...first!,
      subject: 'Your {{carName}}',
      body: `${first!.body}\nSee you soon, {{ownerName}}.`,
    })
    expect(edited).toMatchObject({ subject: 'Your Marlo Wendrel', state: 'draft' })
    expect(edited.body).toContain('See you soon, Ines Vale.')
    await expect(editMessage(desk, { ...first!, subject: 'x', body: 'y' })).rejects.toMatchObject({
      code: 'stale',
    })
    await refuseMessage(desk, second!)
    expect(await message(desk, second!.id)).toMatchObject({
      state: 'withdrawn',
      slots: [{ state: 'gone' }, { state: 'gone' }],
    })
    expect(await approveAll(desk)).toMatchObject({ approved: 2, words: [] })
    expect(await runOutbox(desk)).toMatchObject({ sent: 2, failed: 0, waiting: 0 })
    expect(server.letters.map(letter => letter.to[0]).sort()).toEqual(['owner0@example.com', third!.address])
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    expect(server.letters).toHaveLength(2)
  })

  it('approves nothing with a field nobody could fill', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.layer.deleteMany())
    await prepareBatch(desk)
    const [draft] = (await batch(desk)).messages
    expect(draft!.unfilled).toEqual(['lastDate'])
    await expect(approveMessage(desk, draft!)).rejects.toMatchObject({ code: 'unfilled' })
    const body = draft!.body.replace(/ It was last with us on ____\./, '')
    const edited = await editMessage(desk, { ...draft!, body })
    expect(edited.unfilled).toEqual([])
    expect(await approveMessage(desk, edited)).toMatchObject({ state: 'approved' })
  })
})
