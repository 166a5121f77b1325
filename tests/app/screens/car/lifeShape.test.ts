import { describe, expect, it } from 'vitest'
import { daysAMonth, lifeShape } from '../../../../app/screens/car/lifeShape.ts'
import type { LifeView } from '../../../../main/api/views.ts'
import { ageAtSurvival, survival, type Weibull } from '../../../../main/domain/upkeep/life/weibull.ts'

const size = { width: 600, rem: 16 }
const until = 480

const life = { shape: 2.5, scale: 260 } satisfies Weibull
const view = (part: Partial<LifeView> = {}): LifeView => ({
  productName: 'Topper',
  layerId: 'layer',
  laidOn: '2025-10-20',
  ageDays: 100,
  exposureClass: 'ordinary',
  level: 0.9,
  renewDays: Math.floor(ageAtSurvival(life, 0.9)),
  lowDays: 80,
  highDays: 150,
  confidence: 0.95,
  curve: Array.from({ length: 61 }, (_, i) => {
    const age = (i * until) / 60
    const share = survival(life, age)
    return { age, share, low: share ** 2, high: Math.sqrt(share) }
  }),
  readings: [],
  lives: 0,
  ended: 0,
  priorWeight: 1,
  sentences: [],
  ...part,
})

/** The y of a path at an x, read off between its points. */
function heightAt(path: string, x: number): number {
  const points = path
    .slice(1)
    .split('L')
    .map(pair => pair.split(' ').map(Number) as [number, number])
  const right = points.findIndex(point => point[0] >= x)
  const [a, b] = [points[right - 1]!, points[right]!]
  return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])
}

describe('the picture of a life', () => {
  it('lets the renewal line meet the curve at the level chosen', () => {
    const shape = lifeShape(view(), size)
    expect(heightAt(shape.curve, shape.renewX)).toBeCloseTo(shape.levelY, 0)
  })

  it('puts months where the calendar mean has them', () => {
    const shape = lifeShape(view(), size)
    const across = shape.rightX - shape.leftX
    for (const month of shape.months)
      expect(month.x).toBeCloseTo(shape.leftX + ((Number(month.label) * daysAMonth) / until) * across, 0)
    expect(shape.months.length).toBeLessThanOrEqual(10)
  })

  it('ends a range without an upper end at the edge, and says so', () => {
    expect(lifeShape(view({ highDays: null }), size).range).toMatchObject({ open: true })
    expect(lifeShape(view({ highDays: null }), size).range.toX).toBe(lifeShape(view(), size).rightX)
    expect(lifeShape(view(), size).range.open).toBe(false)
  })

  it('draws what still works as a point, and what is gone as the stretch it ended in', () => {
    const readings = [
      { from: 60, to: null, count: 2 },
      { from: 90, to: 130, count: 1 },
    ]
    const [working, gone] = lifeShape(view({ readings }), size).marks
    expect(working).toMatchObject({ working: true, fromX: null, count: 2 })
    expect(gone!.working).toBe(false)
    expect(gone!.fromX!).toBeLessThan(gone!.x)
    expect(working!.y).toBeLessThan(gone!.y)
  })

  it('leaves today out where the car is older than the picture', () => {
    expect(lifeShape(view({ ageDays: 900 }), size).todayX).toBeNull()
    expect(lifeShape(view(), size).todayX).not.toBeNull()
  })
})
