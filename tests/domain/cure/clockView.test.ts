import { expect, it } from 'vitest'
import type { CureClock } from '../../../main/domain/cure/clock.ts'
import { clockView, commonPracticeProfile, type LaidCoat } from '../../../main/domain/cure/index.ts'

const end = 10_000
const profile = commonPracticeProfile()

/** A coat in a bay so cold that it ages a third of a minute each minute, and never beyond `most`. */
function coat(nowAt: number, most = Number.POSITIVE_INFINITY): LaidCoat {
  const clock: CureClock = {
    coatEndAt: end,
    ageAt: at => Math.min(most, Math.max(0, at - end) / 3),
    reachedAt: ageMin => (ageMin > most ? null : end + ageMin * 3),
    partsUntil: at => ({ measuredMin: at - end, assumedMin: 0, projectedMin: 0 }),
  }
  const windows = { recoat: null, topper: null }
  return {
    clock,
    profile,
    laying: { fromAt: end, toAt: end },
    windows,
    nowAt,
    usualC: 9,
    usualFrom: 'last week',
    heated: true,
  }
}

it('says how old a coat is, and how the time until now and until the handover is known', () => {
  expect(clockView(coat(end + 300), end + 600, end + 900)).toMatchObject({
    knownUntilAt: end + 300,
    ageMin: 100,
    untilNow: { measuredMin: 300 },
    untilSafe: { measuredMin: 600 },
    usualC: 9,
    usualFrom: 'last week',
    heated: true,
    stalled: false,
  })
})

it('draws the past in even points, then the road to the advised handover', () => {
  const { ages } = clockView(coat(end + 240), end + 300, end + 640)
  expect(ages).toHaveLength(24 + 5)
  expect(ages.slice(0, 3)).toEqual([
    [end, 0],
    [end + 10, 3.33],
    [end + 20, 6.67],
  ])
  // The 400 minutes ahead in quarters.
  expect(ages.slice(-5).map(([at]) => at - end)).toEqual([240, 340, 440, 540, 640])
})

it('looks an hour ahead at least, even where the handover is over', () => {
  const { ages } = clockView(coat(end + 240), end + 100, end + 100)
  expect(ages.slice(-5).map(([at]) => at - end)).toEqual([240, 255, 270, 285, 300])
})

it('knows nothing before the coat was finished', () => {
  const { knownUntilAt, ages } = clockView(coat(end - 60), end + 300, end + 400)
  expect(knownUntilAt).toBe(end)
  expect(ages).toHaveLength(5)
  expect(ages[0]).toEqual([end, 0])
})

it('stalls where the cold never lets the last of the full cure be reached', () => {
  const full = profile.fullCure.lateMin
  expect(clockView(coat(end, full - 1), end + 300, end + 400).stalled).toBe(true)
  expect(clockView(coat(end, full), end + 300, end + 400).stalled).toBe(false)
})
