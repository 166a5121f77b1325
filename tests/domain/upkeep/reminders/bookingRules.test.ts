import fc from 'fast-check'
import { expect, it } from 'vitest'
import { bookingRules } from '../../../../main/domain/upkeep/reminders/bookingRules.ts'
import { maySend } from '../../../../main/domain/upkeep/reminders/maySend.ts'
import { questions } from './arbitraries.ts'

it('words about a booking are never held by gap, limit or tries, and by everything else as a reminder is', () => {
  const waived = ['too-soon', 'daily-limit', 'tries-used']
  fc.assert(
    fc.property(questions, question => {
      // Letters sent at a moment still to come are a clock put back, which the gate holds against.
      const sends = question.sends.filter(send => send.at <= question.nowAt)
      const decision = maySend({ ...question, sends, rules: bookingRules(question.rules) })
      const plain = maySend({ ...question, sends })
      if (!decision.ok) expect(waived).not.toContain(decision.code)
      if (plain.ok || !waived.includes(plain.code)) expect(decision).toEqual(plain)
    }),
  )
})
