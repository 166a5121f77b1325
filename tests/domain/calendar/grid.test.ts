import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { atWall, ceilToGrid, onGrid, startOfDay, wallMinuteOf } from '../../../main/domain/calendar/index.ts'

const zones = [
  'America/New_York',
  'Europe/Berlin',
  'Australia/Lord_Howe',
  'America/Santiago',
  'Asia/Kathmandu',
]

describe('the booking grid', () => {
  it('is the first wall time at or after the minute that is a multiple of the grid', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 29_000_000, max: 30_000_000 }),
        fc.constantFrom(1, 5, 15, 20, 30, 60, 7, 50),
        (zone, at, grid) => {
          const up = ceilToGrid(at, grid, zone)
          expect(onGrid(up, grid, zone)).toBe(true)
          for (let t = at; t < up; t++) expect(wallMinuteOf(t, zone) % grid).not.toBe(0)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('is right around every clock change', () => {
    const nights = [
      ['America/New_York', '2026-03-08'],
      ['America/New_York', '2026-11-01'],
      ['Australia/Lord_Howe', '2026-04-05'],
      ['Australia/Lord_Howe', '2026-10-04'],
      ['America/Santiago', '2026-09-06'],
      ['America/Santiago', '2026-04-04'],
    ] as const
    for (const [zone, date] of nights)
      for (const grid of [15, 60, 50]) {
        const from = startOfDay(date, zone) - 60
        for (let at = from; at < from + 1560; at += 7) {
          const up = ceilToGrid(at, grid, zone)
          let naive = at
          while (wallMinuteOf(naive, zone) % grid !== 0) naive++
          expect(up).toBe(naive)
        }
      }
  })

  it('follows the wall clock where the zone is not whole hours ahead (Kathmandu, +05:45)', () => {
    const ten = atWall('2026-05-05', 600, 'Asia/Kathmandu')
    expect(onGrid(ten, 30, 'Asia/Kathmandu')).toBe(true)
    expect(onGrid(ten, 30, 'UTC')).toBe(false)
  })
})
