import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Refusal } from '../../../../main/domain/refusal.ts'
import { BACK_OFF, waitAfter } from '../../../../main/domain/upkeep/reminders/backOff.ts'
import { maySend } from '../../../../main/domain/upkeep/reminders/maySend.ts'
import { messageId, type OutboxMessage } from '../../../../main/domain/upkeep/reminders/message.ts'
import {
  accepted,
  approve,
  beginSending,
  bounced,
  CRASH_RISK,
  CRASH_RISK_WORDS,
  deferred,
  heldAfterRestore,
  putBack,
  recover,
  refused,
  retry,
  revise,
  unanswered,
  withdraw,
} from '../../../../main/domain/upkeep/reminders/outbox.ts'
import { DAY, DRAFT, FREE, GIVEN, NOW, questions } from './arbitraries.ts'

const sending = beginSending(FREE).message

describe('the outbox of a restored copy', () => {
  it('holds what was not out yet, whatever it was at, and lets it go only by a person', () => {
    for (const message of [DRAFT, approve(DRAFT), sending]) {
      const held = heldAfterRestore(message, NOW, 'restored')
      expect(held).toMatchObject({
        state: 'failed',
        startedAt: null,
        failure: { code: 'unknown', text: 'restored', at: NOW },
      })
      expect(() => approve(held)).toThrow(Refusal)
      expect(retry(held).state).toBe('approved')
    }
  })

  it('leaves what was out, failed or withdrawn as it was', () => {
    for (const message of [accepted(sending, NOW), refused(sending, NOW, '550'), withdraw(DRAFT, 'the desk')])
      expect(heldAfterRestore(message, NOW + 1, 'restored')).toBe(message)
  })
})

describe('the outbox', () => {
  it('takes a message from draft to sent', () => {
    const message = approve(DRAFT)
    const begun = beginSending({ ...FREE, message })
    expect(begun).toMatchObject({
      decision: { ok: true },
      message: { state: 'sending', attempts: 1, startedAt: NOW },
    })
    expect(accepted(begun.message, NOW + 1)).toMatchObject({
      state: 'sent',
      sentAt: NOW + 1,
      startedAt: null,
    })
  })

  it('lets nothing into sending but through the gate, whatever happens to a message', () => {
    const words = { subject: 's', body: 'b', unfilled: [] }
    const events: Record<string, (message: OutboxMessage, at: number) => OutboxMessage> = {
      approve,
      revise: message => revise(message, words),
      withdraw: message => withdraw(message, 'the desk'),
      accepted,
      refused: (message, at) => refused(message, at, '550'),
      deferred: (message, at) => deferred(message, at, '451'),
      putBack,
      unanswered: (message, at) => unanswered(message, at, 'gone'),
      recover: (message, at) => recover(message, at),
      retry,
      bounced: (message, at) => bounced(message, at, 'unknown user'),
      begin: message => message,
    }
    const event = fc.oneof(
      { arbitrary: fc.constant('begin'), weight: 3 },
      { arbitrary: fc.constant('approve'), weight: 3 },
      { arbitrary: fc.constantFrom(...Object.keys(events)), weight: 4 },
    )
    const path = fc.array(fc.tuple(event, questions), { maxLength: 25 })
    let sendings = 0
    fc.assert(
      fc.property(path, steps => {
        let message: OutboxMessage = DRAFT
        let taken = 0
        for (const [name, question] of steps) {
          const before = message
          try {
            if (name === 'begin') {
              const asked = { ...question, message, consents: [GIVEN, ...question.consents] }
              message = beginSending(asked).message
              if (message.state === 'sending') {
                expect(maySend(asked)).toEqual({ ok: true })
                sendings++
              }
            } else message = events[name]!(message, question.nowAt)
          } catch (error) {
            expect(error).toBeInstanceOf(Refusal)
          }
          if (message.state === 'sending' && before.state !== 'sending') expect(name).toBe('begin')
          if (before.state !== 'sent' && message.state === 'sent') taken++
          expect(message.id).toBe(DRAFT.id)
        }
        // However long the path, the server's yes is had once: after it, nothing sends the message again.
        expect(taken).toBeLessThanOrEqual(1)
      }),
      { numRuns: 1500 },
    )
    expect(sendings).toBeGreaterThan(100)
  })

  it('waits longer after each deferral, and gives up after the last', () => {
    let message: OutboxMessage = FREE.message
    const waits: number[] = []
    for (let at = NOW; message.state === 'approved'; ) {
      message = { ...message, state: 'sending', attempts: message.attempts + 1 }
      message = deferred(message, at, '451 try later')
      if (message.notBeforeAt !== null && message.state === 'approved') {
        waits.push(message.notBeforeAt - at)
        at = message.notBeforeAt
      }
    }
    expect(waits).toEqual([30, 60, 120, 240, 480, 960, 1440, 1440, 1440])
    expect(message).toMatchObject({ state: 'failed', failure: { code: 'gave-up', text: '451 try later' } })
    // RFC 5321 section 4.5.4.1: at least 30 minutes between attempts, giving up after 4 to 5 days (from memory).
    const total = waits.reduce((sum, wait) => sum + wait, 0)
    expect(Math.min(...waits)).toBeGreaterThanOrEqual(30)
    expect(total).toBeGreaterThan(4 * DAY)
    expect(total).toBeLessThan(5 * DAY)
    expect(waitAfter(BACK_OFF.maxAttempts)).toBeNull()
  })

  it('stops what the gate holds for good, and keeps the rest for its moment', () => {
    expect(beginSending({ ...FREE, soldAt: NOW }).message).toMatchObject({
      state: 'withdrawn',
      withdrawnBecause: 'The car was sold.',
    })
    const night = beginSending({ ...FREE, nowAt: NOW + 12 * 60 })
    expect(night.message).toMatchObject({ state: 'approved', attempts: 0, notBeforeAt: NOW + 22 * 60 })
  })

  it('drops the approval when the words change', () => {
    const changed = revise(approve(DRAFT), { subject: 'New', body: 'Other', unfilled: ['plate'] })
    expect(changed).toMatchObject({ state: 'draft', subject: 'New' })
    expect(() => approve(changed)).toThrow(/plate/)
  })

  it('does not try again what the desk withdrew on its way', () => {
    const stopped = withdraw(sending, 'rang and said no')
    expect(stopped.state).toBe('sending')
    expect(accepted(stopped, NOW).state).toBe('sent')
    expect(deferred(stopped, NOW, '451').state).toBe('withdrawn')
    expect(putBack(stopped).state).toBe('withdrawn')
    expect(recover(stopped, NOW).state).toBe('withdrawn')
  })

  it('does not count an attempt that failed for the shop’s own settings', () => {
    expect(putBack(sending)).toMatchObject({ state: 'approved', attempts: 0 })
  })

  it('tries a failed one again when asked, but not at an address that sent it back', () => {
    const failed = refused(sending, NOW, '550 no')
    expect(failed).toMatchObject({ state: 'failed', failure: { code: 'refused', text: '550 no', at: NOW } })
    expect(retry(failed)).toMatchObject({ state: 'approved', attempts: 0, failure: null })
    const back = bounced(accepted(sending, NOW), NOW + 5, 'mailbox unknown')
    expect(back).toMatchObject({ state: 'failed', failure: { code: 'bounced' } })
    expect(() => retry(back)).toThrow(expect.objectContaining({ code: 'address-bounced' }))
  })

  it.each([
    ['approve', () => approve(sending)],
    ['change', () => revise(sending, { subject: '', body: '', unfilled: [] })],
    ['withdraw', () => withdraw(accepted(sending, NOW), '')],
    ['send', () => beginSending({ ...FREE, message: DRAFT })],
    ['send again', () => beginSending({ ...FREE, message: accepted(sending, NOW) })],
    ['accept', () => accepted(DRAFT, NOW)],
    ['retry', () => retry(DRAFT)],
    ['bounce', () => bounced(DRAFT, NOW, '')],
  ])('refuses to %s out of turn', (_, act) => {
    expect(act).toThrow(expect.objectContaining({ code: 'message-state', field: 'state' }))
  })
})

describe('after a crash', () => {
  it('takes the risk of a second copy, once per crash, and says so', () => {
    expect(CRASH_RISK).toBe('again')
    expect(CRASH_RISK_WORDS[CRASH_RISK]).toContain('may arrive twice')
    const recovered = recover(sending, NOW + 3)
    expect(recovered).toMatchObject({ state: 'approved', unanswered: 1, id: sending.id })
  })

  it('or, if the shop prefers, waits for the desk', () => {
    expect(recover(sending, NOW, 'ask')).toMatchObject({
      state: 'failed',
      failure: { code: 'unknown' },
      unanswered: 1,
    })
    expect(CRASH_RISK_WORDS.ask).toContain('may be lost')
  })

  it('leaves every other message as it was', () => {
    for (const message of [
      DRAFT,
      approve(DRAFT),
      accepted(sending, NOW),
      refused(sending, NOW, ''),
      withdraw(DRAFT, ''),
    ])
      expect(recover(message, NOW)).toBe(message)
  })

  it('loses none of a thousand and doubles at most one per crash, wherever it strikes', () => {
    // The server's and the shop's own memory apart, as they are: `arrived` is what owners see.
    const run = (crashes: readonly number[]) => {
      const strikes = new Set(crashes)
      const arrived = new Map<string, number>()
      const box = Array.from(
        { length: 1000 },
        (_, i): OutboxMessage => ({ ...FREE.message, id: `<m${i}@x.example>` }),
      )
      let step = 0
      let at = NOW
      for (let i = 0; i < box.length; ) {
        if (box[i]!.state === 'sent') {
          i++
          continue
        }
        at = Math.max(at, box[i]!.notBeforeAt ?? at)
        box[i] = beginSending({ ...FREE, message: box[i]!, nowAt: at }).message
        if (strikes.has(step++)) {
          for (let j = 0; j < box.length; j++) box[j] = recover(box[j]!, at)
          continue
        }
        if (box[i]!.state !== 'sending') continue
        arrived.set(box[i]!.id, (arrived.get(box[i]!.id) ?? 0) + 1)
        if (strikes.has(step++)) {
          for (let j = 0; j < box.length; j++) box[j] = recover(box[j]!, at)
          continue
        }
        box[i] = accepted(box[i]!, at)
      }
      return arrived
    }
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 1990 }), { minLength: 20, maxLength: 20 }),
        crashes => {
          const arrived = run(crashes)
          expect(arrived.size).toBe(1000)
          const twice = [...arrived.values()].reduce((sum, copies) => sum + copies - 1, 0)
          expect(twice).toBeLessThanOrEqual(20)
        },
      ),
      { numRuns: 20 },
    )
  })
})

describe('message ids', () => {
  const about = { visitId: 'p1 2026-09-14', channel: 'email', tryNo: 1 } as const

  it('are the same for the same reminder, and a dot-atom either side of the @', () => {
    expect(messageId(about, 'shop.example')).toBe('<p1_20_2026-09-14.email.1@shop.example>')
    expect(messageId({ ...about, tryNo: 2 }, 'shop.example')).not.toBe(messageId(about, 'shop.example'))
  })

  it('differ for different visits, whatever is in their ids', () => {
    const id = fc.string({ minLength: 1, maxLength: 12, unit: 'binary' })
    fc.assert(
      fc.property(id, id, (a, b) => {
        const made = messageId({ ...about, visitId: a }, 'shop.example')
        // RFC 5322 section 3.2.3: atext and single dots.
        expect(made).toMatch(/^<[A-Za-z0-9_-]+(\.[A-Za-z0-9_-]+)*@shop\.example>$/)
        expect(made === messageId({ ...about, visitId: b }, 'shop.example')).toBe(a === b)
      }),
    )
  })

  it.each(['', 'localhost', 'shop.example\r\nBcc: x', 'a b.example'])('refuse the domain "%s"', domain => {
    expect(() => messageId(about, domain)).toThrow(expect.objectContaining({ code: 'domain-bad' }))
  })
})
