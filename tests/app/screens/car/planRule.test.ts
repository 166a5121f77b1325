import { expect, it } from 'vitest'
import { planRule } from '../../../../app/screens/car/planRule.ts'
import { daysOf } from '../../../domain/upkeep/recurrence/days.ts'

// Counted off on a wall calendar of 2026.
it.each([
  ['once', 1, ['2026-04-15']],
  ['days', 10, ['2026-04-15', '2026-04-25', '2026-05-05']],
  ['weeks', 2, ['2026-04-15', '2026-04-29', '2026-05-13']],
  ['months', 6, ['2026-04-15', '2026-10-15', '2027-04-15']],
  ['years', 1, ['2026-04-15', '2027-04-15', '2028-04-15']],
] as const)('%s, %i: on %j', (repeats, every, on) => {
  expect(daysOf(planRule(repeats, every, ''), '2026-04-15', 3)).toEqual(on)
})

it('takes a rule of its own as it was typed', () => {
  expect(planRule('own', 1, ' FREQ=YEARLY;BYMONTH=4;BYDAY=1MO ')).toBe('FREQ=YEARLY;BYMONTH=4;BYDAY=1MO')
})
