import { expect, it } from 'vitest'
import { closedWords } from '../../../main/services/upkeep/reminded.ts'

const sent = {
  messageId: 'm',
  channel: 'email',
  state: 'sent',
  tryNo: 3,
  sentAt: 1,
  outcome: null,
  nextTryOn: null,
} as const

it('closes a visit once the owner said no, sold the car, or all tries have gone out', () => {
  expect(closedWords({ ...sent, tryNo: 1, outcome: 'no' }, 3)).toContain('said no')
  expect(closedWords({ ...sent, tryNo: 1, outcome: 'sold' }, 3)).toContain('sold the car')
  expect(closedWords(sent, 3)).toContain('3 reminders went out')
})

it('leaves it open where nothing was written, a try is left, the last waits, or it was booked', () => {
  expect(closedWords(null, 3)).toBeNull()
  expect(closedWords({ ...sent, tryNo: 2 }, 3)).toBeNull()
  expect(closedWords({ ...sent, sentAt: null }, 3)).toBeNull()
  expect(closedWords({ ...sent, outcome: 'booked' }, 3)).toBeNull()
})
