import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { copiesToKeep } from '../../../main/domain/backup/index.ts'
import { dateOf, minuteOf } from '../../../main/domain/calendar/index.ts'

const at = (iso: string) => minuteOf(Temporal.Instant.from(iso))
const nowAt = at('2026-04-15T12:30:00Z')
const hour = 60
const day = 24 * hour

const zone = fc.constantFrom('UTC', 'America/New_York', 'Asia/Kolkata', 'Australia/Lord_Howe')
const made = fc.array(fc.integer({ min: nowAt - 400 * day, max: nowAt }), { maxLength: 60 })

describe('which copies are kept', () => {
  it('is the last of each hour for a day, of each day for a month, of each month after that', () => {
    const hourly = Array.from({ length: 400 * 24 }, (_, i) => nowAt - i * hour)
    const kept = copiesToKeep(hourly, nowAt, 'UTC')
    const aged = (from: number, to: number) => kept.filter(each => nowAt - each > from && nowAt - each <= to)
    expect(aged(-1, day)).toHaveLength(25)
    expect(aged(day, 31 * day)).toHaveLength(30)
    // 400 days back from mid-April: the ends of the twelve months from March to the March before.
    expect(aged(31 * day, 400 * day).map(each => dateOf(each, 'UTC'))).toEqual([
      '2025-03-31',
      '2025-04-30',
      '2025-05-31',
      '2025-06-30',
      '2025-07-31',
      '2025-08-31',
      '2025-09-30',
      '2025-10-31',
      '2025-11-30',
      '2025-12-31',
      '2026-01-31',
      '2026-02-28',
    ])
  })

  it('is the newest in any case, however old, and nothing where there is none', () => {
    const old = nowAt - 30 * 366 * day
    expect(copiesToKeep([old, old - 1], nowAt, 'UTC')).toEqual([old])
    expect(copiesToKeep([], nowAt, 'UTC')).toEqual([])
  })

  it('is the end of the shop’s own day, not of another zone’s', () => {
    const evening = at('2026-04-02T03:30:00Z')
    const morning = at('2026-04-02T13:00:00Z')
    expect(copiesToKeep([evening, morning, nowAt], nowAt, 'UTC')).toEqual([morning, nowAt])
    expect(copiesToKeep([evening, morning, nowAt], nowAt, 'America/New_York')).toEqual([
      evening,
      morning,
      nowAt,
    ])
  })

  it('is some of what was made, each once and in order, and always the newest', () => {
    fc.assert(
      fc.property(made, zone, (list, zone) => {
        const kept = copiesToKeep(list, nowAt, zone)
        expect(kept).toEqual([...new Set(kept)].sort((a, b) => a - b))
        expect(list).toEqual(expect.arrayContaining(kept))
        expect(kept.at(-1)).toBe(list.length > 0 ? Math.max(...list) : undefined)
      }),
    )
  })

  it('leaves every day of the last month and every month before it a copy, if one was made', () => {
    fc.assert(
      fc.property(made, zone, (list, zone) => {
        const kept = new Set(copiesToKeep(list, nowAt, zone).map(each => dateOf(each, zone)))
        for (const each of list) {
          const date = dateOf(each, zone)
          if (nowAt - each < 30 * day) expect(kept).toContain(date)
          else expect([...kept].map(other => other.slice(0, 7))).toContain(date.slice(0, 7))
        }
      }),
    )
  })

  it('is the same whether it was asked in between or not', () => {
    fc.assert(
      fc.property(made, zone, fc.nat({ max: 200 * day }), (list, zone, later) => {
        const between = copiesToKeep(list, nowAt, zone)
        expect(copiesToKeep(between, nowAt + later, zone)).toEqual(copiesToKeep(list, nowAt + later, zone))
      }),
    )
  })

  it('stays small under a clock set wrong: of what lies ahead the last two dozen are kept', () => {
    const ahead = Array.from({ length: 500 }, (_, i) => nowAt + 1 + i * hour)
    const kept = copiesToKeep([...ahead, nowAt], nowAt, 'UTC')
    expect(kept).toEqual([nowAt, ...ahead.slice(-24)])
  })
})
