import { describe, expect, it } from 'vitest'
import { atWall, onGrid } from '../../../main/domain/calendar/index.ts'

describe('the grid', () => {
  it.each([
    [540, 15, true],
    [541, 15, false],
    [554, 15, false],
    [555, 15, true],
    [0, 45, true],
    [45, 45, true],
    [60, 45, false],
  ])('at minute %i of the day, steps of %i: %s', (minute, gridMin, lies) => {
    expect(onGrid(atWall('2026-04-15', minute, 'America/New_York'), gridMin, 'America/New_York')).toBe(lies)
  })

  it('follows the wall clock where the zone is not whole hours ahead (Kathmandu, +05:45)', () => {
    expect(onGrid(atWall('2026-04-15', 540, 'Asia/Kathmandu'), 30, 'Asia/Kathmandu')).toBe(true)
    expect(onGrid(atWall('2026-04-15', 540, 'Asia/Kathmandu') + 15, 30, 'Asia/Kathmandu')).toBe(false)
  })

  it('follows it through a change by half an hour (Lord Howe, IANA: 5 April 2026, 02:00 becomes 01:30)', () => {
    const zone = 'Australia/Lord_Howe'
    const before = atWall('2026-04-05', 60, zone)
    // 01:00, and 60 minutes later the clock shows 01:30 again.
    expect([0, 30, 60, 90].map(min => onGrid(before + min, 60, zone))).toEqual([true, false, false, true])
  })
})
