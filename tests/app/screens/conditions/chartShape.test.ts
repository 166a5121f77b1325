import { expect, test } from 'vitest'
import { degreeTicks, linePath, timeTicks } from '../../../../app/screens/conditions/chartShape.ts'

test('A line breaks where nothing was measured, and a lone reading is a dot', () => {
  const point = (at: number) => ({ at, x: at, y: 10 })
  expect(linePath([0, 10, 200].map(point), 60)).toBe('M0.0 10.0L10.0 10.0M200.0 10.0h0.5')
  expect(linePath([], 60)).toBe('')
})

test('Degrees are marked at round values, not too many of them', () => {
  expect(degreeTicks(11.3, 24.8)).toEqual([12, 14, 16, 18, 20, 22, 24])
  expect(degreeTicks(48, 90).length).toBeLessThanOrEqual(10)
})

test('Hours are marked at the shop’s wall times, through the night the clocks change', () => {
  const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds / 60_000
  // New York, 8 March 2026: the clocks go from 02:00 to 03:00. Source: IANA time zone database, rules US.
  const ticks = timeTicks(at('2026-03-08T00:00:00Z'), at('2026-03-09T12:00:00Z'), 'America/New_York', 400)
  const walls = ticks.map(
    tick => Temporal.Instant.fromEpochMilliseconds(tick * 60_000).toZonedDateTimeISO('America/New_York').hour,
  )
  expect(walls.length).toBeGreaterThan(1)
  expect(new Set(walls)).toEqual(new Set([0, 12].filter(hour => walls.includes(hour))))
})
