import type { SendRules } from './maySend.ts'

/**
 * The shop's rules for words about a booking, which advertise nothing: the owner waits for them, and a car that is
 * ready does not become less so because a reminder went out on Monday. So neither the gap between two messages nor the
 * day's limit nor the number of tries holds them. Quiet hours do, since a mail that rings at night wakes all the same.
 *
 * Consent is asked for as it is for a reminder. Telling people of their own order wants none by most laws (common
 * practice, no source), but the ledger knows ways of being reached, not purposes: whoever says "no more e-mail" has not
 * said "but for my booking", and the shop cannot prove that somebody never asked wants any. Who did not agree is rung.
 */
export function bookingRules(rules: SendRules): SendRules {
  return {
    ...rules,
    gapDays: 0,
    dailyLimit: Number.POSITIVE_INFINITY,
    maxTries: Number.POSITIVE_INFINITY,
  }
}
