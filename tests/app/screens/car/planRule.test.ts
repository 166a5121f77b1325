import { expect, it } from 'vitest'
import { planRule } from '../../../../app/screens/car/planRule.ts'
import { firstOccurrences } from '../../../../main/domain/upkeep/index.ts'

const days = (rule: string) =>
  firstOccurrences({ rule, start: '2026-04-15T09:00', zone: 'Europe/London' }, 3).map(each =>
    each.wall.slice(0, 10),
  )

// Counted off on a wall calendar of 2026.
it.each([
  ['once', 1, ['2026-04-15']],
  ['days', 10, ['2026-04-15', '2026-04-25', '2026-05-05']],
  ['weeks', 2, ['2026-04-15', '2026-04-29', '2026-05-13']],
  ['months', 6, ['2026-04-15', '2026-10-15', '2027-04-15']],
  ['years', 1, ['2026-04-15', '2027-04-15', '2028-04-15']],
] as const)('%s, %i: on %j', (repeats, every, on) => {
  expect(days(planRule(repeats, every, ''))).toEqual(on)
})

it('takes a rule of its own as it was typed', () => {
  expect(planRule('own', 1, ' FREQ=YEARLY;BYMONTH=4;BYDAY=1MO ')).toBe('FREQ=YEARLY;BYMONTH=4;BYDAY=1MO')
})
