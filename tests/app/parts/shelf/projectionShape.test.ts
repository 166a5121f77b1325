import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { projectionShape } from '../../../../app/parts/shelf/projectionShape.ts'
import type { ProjectionView } from '../../../../main/api/views.ts'

const box = { width: 280, height: 92, foot: 20 }

/** Days from Monday 2026-04-13 on, closed at weekends. */
function view(levels: { low: number; likely: number; high: number }[], more: Partial<ProjectionView> = {}) {
  const days = levels.map((level, i): ProjectionView['days'][number] => {
    const date = Temporal.PlainDate.from('2026-04-13').add({ days: i })
    return { date: String(date), open: date.dayOfWeek < 6, booked: 0, arrives: 0, expires: 0, ...level }
  })
  return { days, runsDry: null, mayRunDry: null, deliveries: [], expiries: [], ...more }
}

const flat = (days: number) => view(Array.from({ length: days }, () => ({ low: 5, likely: 10, high: 20 })))

const points = (path: string) =>
  path
    .replace(/[MZ]/g, '')
    .split('L')
    .map(point => point.split(' ').map(Number))

describe('the chart of a projection', () => {
  it('keeps every level inside the chart, and the likely line inside its band', () => {
    const level = fc
      .tuple(fc.nat(900), fc.nat(900), fc.nat(900))
      .map(amounts => amounts.sort((a, b) => a - b))
      .map(([low, likely, high]) => ({ low: low!, likely: likely!, high: high! }))
    fc.assert(
      fc.property(fc.array(level, { minLength: 1, maxLength: 40 }), fc.nat(900), (levels, onHand) => {
        const shape = projectionShape(view(levels), onHand, null, box)
        const band = points(shape.band)
        const likely = points(shape.likely).slice(1)
        for (const [x, y] of [...band, ...likely]) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(box.width)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(shape.floorY)
        }
        const lows = band.slice(likely.length).reverse()
        likely.forEach(([, y], i) => {
          expect(y).toBeGreaterThanOrEqual(band[i]![1]!)
          expect(y).toBeLessThanOrEqual(lows[i]![1]!)
        })
      }),
    )
  })

  it('shades open days only: five of them end on the Friday, six reach over the weekend', () => {
    const dayWide = box.width / 14
    expect(projectionShape(flat(14), 10, 5, box).leadX).toBeCloseTo(5 * dayWide, 0)
    expect(projectionShape(flat(14), 10, 6, box).leadX).toBeCloseTo(8 * dayWide, 0)
    expect(projectionShape(flat(14), 10, null, box).leadX).toBeNull()
  })

  it('marks the day of the next order by open days, and none beyond the picture', () => {
    const dayWide = box.width / 14
    expect(projectionShape(flat(14), 10, null, box, 5).orderX).toBeCloseTo(5 * dayWide, 0)
    expect(projectionShape(flat(14), 10, null, box, 100).orderX).toBeNull()
    expect(projectionShape(flat(14), 10, null, box).orderX).toBeNull()
  })

  it('keeps its dates apart, however narrow it is', () => {
    for (const width of [120, 280, 700]) {
      const { ticks } = projectionShape(flat(60), 10, null, { ...box, width })
      const ends = ticks.map(tick =>
        tick.end ? { from: width - 60, to: width } : { from: tick.x, to: tick.x + 60 },
      )
      for (const [i, tick] of ends.entries()) expect(tick.from).toBeGreaterThanOrEqual(ends[i - 1]?.to ?? 0)
    }
  })

  it('marks the day it runs dry, and the day it may where none is named', () => {
    const dry = { date: '2026-04-21', words: '', jobId: null }
    const dayWide = box.width / 14
    expect(projectionShape({ ...flat(14), runsDry: dry }, 10, null, box).dryX).toBeCloseTo(8 * dayWide, 0)
    expect(projectionShape({ ...flat(14), mayRunDry: '2026-04-15' }, 10, null, box).dryX).toBeCloseTo(
      2 * dayWide,
      0,
    )
  })

  it('marks deliveries within the days shown and leaves out those after', () => {
    const delivery = (date: string) => ({ date, lateOn: date, amount: 1, orderId: '', orderNumber: 1 })
    const both = { ...flat(14), deliveries: [delivery('2026-04-16'), delivery('2026-06-01')] }
    expect(projectionShape(both, 10, null, box).deliveries).toHaveLength(1)
  })

  it('draws nothing where there are no days, instead of a broken path', () => {
    const shape = projectionShape(view([]), 0, 3, box)
    expect(shape.band + shape.likely).toBe('')
  })
})
