import { describe, expect, test } from 'vitest'
import { dayHeads, hourTicks } from '../../../app/parts/ticks.ts'
import { atWall, startOfDay } from '../../../main/domain/calendar/index.ts'

describe('the heads of the board', () => {
  test('cut the axis at the shop’s midnights, also on the short day of a clock change', () => {
    const zone = 'Europe/Berlin'
    const from = startOfDay('2026-03-28', zone)
    const days = dayHeads(from, startOfDay('2026-03-31', zone), zone)
    expect(days.map(day => [day.date, day.toAt - day.fromAt])).toEqual([
      ['2026-03-28', 1440],
      ['2026-03-29', 1380],
      ['2026-03-30', 1440],
    ])
  })

  test('carry the hours of the shop’s wall clock, the ends of opening included', () => {
    const zone = 'America/St_Johns'
    const open = [{ from: atWall('2026-04-14', 480, zone), to: atWall('2026-04-14', 1080, zone) }]
    expect(hourTicks(open, 2, zone).map(tick => tick.label)).toEqual(['08', '10', '12', '14', '16', '18'])
  })

  test('skip the hour that does not exist', () => {
    const zone = 'America/New_York'
    const open = [{ from: atWall('2026-03-08', 0, zone), to: atWall('2026-03-08', 300, zone) }]
    expect(hourTicks(open, 1, zone).map(tick => tick.label)).toEqual(['00', '01', '03', '04', '05'])
  })
})
