import { describe, expect, it } from 'vitest'
import { dayNumber } from '../../../main/domain/calendar/index.ts'
import { arrivalChances, coverChances, workingDayOf } from '../../../main/domain/shelf/index.ts'
import { supplier } from './supplierFixture.ts'

const day = (date: string) => dayNumber(date)
const works = workingDayOf(supplier)

describe('the span to cover', () => {
  const open = (d: number) => workingDayOf({ weekdays: [1, 2, 3, 4, 5, 6], closedOn: [] })(d)

  it('ends when the order after this one could be here, in open days', () => {
    // Wednesday: the next order goes out on Thursday, comes on Tuesday after three working days; open on Saturday too.
    const when = { today: day('2026-04-15'), lead: supplier.lead, supplierWorks: works, shopOpen: open }
    expect(coverChances(when).indexOf(1)).toBe(5)
    expect(arrivalChances(when).indexOf(1)).toBe(4)
    // Once a week: the order goes out on Wednesday next.
    expect(coverChances({ ...when, reviewDays: 6 }).indexOf(1)).toBe(10)
  })

  it('is a set of chances where the supplier is late', () => {
    const when = {
      today: day('2026-04-15'),
      lead: { meanDays: 4, sdDays: 1.5 },
      supplierWorks: works,
      shopOpen: open,
    }
    const cover = coverChances(when)
    expect(cover.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
    expect(cover.filter(chance => chance > 0.01).length).toBeGreaterThan(4)
  })
})
