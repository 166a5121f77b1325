import { describe, expect, it } from 'vitest'
import { clockChanges } from '../../../main/domain/calendar/clockChanges.ts'
import { minuteOf } from '../../../main/domain/calendar/index.ts'

describe('clock changes', () => {
  it('are those at or after the first minute and before the last', () => {
    // 8 March 2026, 07:00 UTC (IANA time zone database).
    const change = minuteOf(Temporal.Instant.from('2026-03-08T07:00Z'))
    const found = (from: number, to: number) => clockChanges('America/New_York', from, to).map(({ at }) => at)
    expect(found(change, change + 1)).toEqual([change])
    expect(found(change - 10, change)).toEqual([])
    expect(found(change + 1, change + 10)).toEqual([])
  })
})
