import { describe, expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../main/domain/calendar/index.ts'
import { deliveryWindow } from '../../../main/domain/shelf/index.ts'
import { supplier } from './supplierFixture.ts'

const day = (date: string) => dayNumber(date)

describe('orders under way', () => {
  const late = { ...supplier, lead: { meanDays: 5, sdDays: 2 } }
  const order = { placedOn: '2026-04-13', promisedOn: null }

  it('come within a window, and only later the longer they stay away', () => {
    const fresh = deliveryWindow(late, order, day('2026-04-13'))
    expect(fresh.earlyDay).toBeLessThan(fresh.likelyDay)
    expect(fresh.likelyDay).toBeLessThan(fresh.lateDay)
    for (let today = day('2026-04-13'); today < day('2026-06-15'); today++) {
      const now = deliveryWindow(late, order, today)
      const next = deliveryWindow(late, order, today + 1)
      expect(now.earlyDay).toBeGreaterThan(today)
      expect(next.likelyDay).toBeGreaterThanOrEqual(now.likelyDay)
    }
  })

  it('are expected on the promised day while it lies ahead', () => {
    const window = deliveryWindow(late, { ...order, promisedOn: '2026-05-04' }, day('2026-04-14'))
    expect(dateOfDay(window.likelyDay)).toBe('2026-05-04')
    expect(window.lateDay).toBeGreaterThan(window.likelyDay)
  })
})
