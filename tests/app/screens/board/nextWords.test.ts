import { expect, test } from 'vitest'
import { nextWords } from '../../../../app/screens/board/nextWords.ts'

const now = Temporal.Instant.from('2026-04-15T12:00:00Z').epochMilliseconds / 60_000
const words = (
  what: 'touch' | 'layer' | 'topper' | 'leave',
  from: number,
  until: number | null = null,
  leaving: 'dry' | 'covered' = 'dry',
) =>
  nextWords({ what, fromAt: now + from, untilAt: until === null ? null : now + until, leaving }, now, 'UTC')

test('A badge says the next thing and when: before, within, past its window', () => {
  expect(words('touch', 65)).toBe('▲ touch 13:05')
  expect(words('topper', 60, 120)).toBe('◆ topper 13:00 to 14:00')
  expect(words('topper', -30, 30)).toBe('◆ topper until 12:30')
  expect(words('topper', -120, -60)).toBe('◆ topper missed 11:00')
  expect(words('leave', -270)).toBe('● pick-up since 07:30')
  expect(words('leave', 1440)).toBe('● pick-up Thu 12:00')
  expect(words('leave', -270, null, 'covered')).toBe('● pick-up under cover since 07:30')
})
