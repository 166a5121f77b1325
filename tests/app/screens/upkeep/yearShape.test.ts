import { describe, expect, it } from 'vitest'
import { yearShape } from '../../../../app/screens/upkeep/year/yearShape.ts'
import type { WeekView } from '../../../../main/api/views.ts'

const size = { width: 1_000, rem: 16 }

const weeks = (of: (i: number) => Partial<WeekView>, count = 52): WeekView[] =>
  Array.from({ length: count }, (_, i) => ({
    beginsOn: Temporal.PlainDate.from('2026-04-13').add({ weeks: i }).toString(),
    week: i + 1,
    asDue: 0,
    planned: 0,
    room: 6,
    ...of(i),
  }))

describe('the picture of the year', () => {
  it('draws a bar as high as its visits against the scale, and marks what there is no room for', () => {
    const shape = yearShape(
      weeks(i => (i === 3 ? { asDue: 12, planned: 9 } : { planned: 3 })),
      null,
      size,
    )
    const height = (visits: number) => (visits / 12) * (shape.floorY - 1.4 * size.rem)
    const [first, , , fourth] = shape.bars
    expect(first!.overflows).toBe(false)
    expect(shape.floorY - first!.topY).toBeCloseTo(height(3))
    expect(fourth!.overflows).toBe(true)
    expect(shape.floorY - fourth!.topY).toBeCloseTo(height(9))
    expect(shape.floorY - fourth!.fitY).toBeCloseTo(height(6))
  })

  it('cuts far too much room off, says so, and keeps the visits readable', () => {
    const shape = yearShape(
      weeks(() => ({ planned: 4, room: 60 })),
      null,
      size,
    )
    expect(shape.roomEnd.label).toBe('room 60 ↑')
    // Four of six, as half as much again is the top.
    expect(shape.floorY - shape.bars[0]!.topY).toBeCloseTo((4 / 6) * (shape.floorY - 1.4 * size.rem))
    expect(
      yearShape(
        weeks(() => ({ planned: 4, room: 5 })),
        null,
        size,
      ).roomEnd.label,
    ).toBe('room 5')
  })

  it('keeps every bar inside the picture and apart from the next', () => {
    const { bars } = yearShape(
      weeks(i => ({ planned: i % 7 })),
      null,
      size,
    )
    bars.forEach((bar, i) => {
      expect(bar.x + bar.width).toBeLessThanOrEqual(bars[i + 1]?.x ?? size.width)
    })
  })

  it('shows what was aimed at before only where it is asked for', () => {
    const year = weeks(() => ({ planned: 2 }))
    expect(yearShape(year, null, size).bars.every(bar => bar.beforeY === null)).toBe(true)
    const compared = yearShape(
      year,
      year.map(() => 2),
      size,
    )
    expect(compared.bars.every(bar => bar.beforeY === bar.topY)).toBe(true)
  })

  it('names months in order, no two so near that they touch', () => {
    const { months } = yearShape(
      weeks(() => ({})),
      null,
      size,
    )
    expect(months.slice(0, 3).map(month => month.label)).toEqual(['Apr', 'May', 'Jun'])
    months.slice(1).forEach((month, i) => {
      expect(month.x - months[i]!.x).toBeGreaterThanOrEqual(2.2 * size.rem)
    })
  })
})
