import { beforeEach, describe, expect, it } from 'vitest'
import { callList, letterList } from '../../../main/services/reminders/deskLists.ts'
import { sentByHand } from '../../../main/services/reminders/messageActs.ts'
import { recordOutcome } from '../../../main/services/reminders/outcomes.ts'
import { ownerLetter } from '../../../main/services/reminders/ownerLetter.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { type MailDesk, mailDesk } from './mailDesk.ts'
import { approvedBatch, duePlan, message } from './reminderDesk.ts'

let desk: MailDesk['desk']
let car: MailDesk['car']
beforeEach(async () => {
  ;({ desk, car } = await mailDesk())
})

describe('by hand', () => {
  it('a letter is printed for the window, posted, and counted once', async () => {
    await agree(desk, car(), ['letter'])
    await duePlan(desk, car())
    const [draft] = await approvedBatch(desk)
    expect(draft).toMatchObject({ channel: 'letter', state: 'approved' })
    const [listed] = await letterList(desk)
    const { bytes, type } = await ownerLetter(desk, { messageId: listed!.id })
    expect(type).toBe('application/pdf')
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-')
    expect(await sentByHand(desk, listed!)).toMatchObject({ state: 'sent' })
    expect(await letterList(desk)).toEqual([])
    await expect(sentByHand(desk, await message(desk, listed!.id))).rejects.toMatchObject({
      code: 'message-state',
    })
  })

  it('a text waits on the list with its link and picture; a call with its script', async () => {
    await agree(desk, car(), ['text'], 'a@example.com')
    await agree(desk, car(1), ['call'], 'b@example.com')
    for (const i of [0, 1]) await duePlan(desk, car(i))
    await approvedBatch(desk)
    const list = await callList(desk)
    const text = list.find(each => each.message.channel === 'text')!
    // RFC 5724 section 2.2: sms:+12125550143?body=... with the body percent-encoded.
    expect(text.sms!.link).toMatch(/^sms:\+12125550143\?body=[^\s"<>]+$/)
    expect(decodeURIComponent(text.sms!.link.split('body=')[1]!)).toBe(text.message.body)
    expect(text.sms!.qr).toMatch(/^data:image\/svg\+xml,/)
    const call = list.find(each => each.message.channel === 'call')!
    expect(call.script).toContain('Toma Birk')
    expect(await recordOutcome(desk, { messageId: call.message.id, outcome: 'unreachable' })).toMatchObject({
      state: 'sent',
      nextTryOn: '2026-04-25',
    })
  })
})
