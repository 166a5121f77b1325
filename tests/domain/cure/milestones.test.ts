import { describe, expect, it } from 'vitest'
import { atWall, wallMinuteOf } from '../../../main/domain/calendar/index.ts'
import { advisedByPracticeMin } from '../../../main/domain/cure/commonPractice.ts'
import { checkProfile, commonPracticeProfile, milestones } from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

const hour = 60
const day = 24 * hour

describe('milestones', () => {
  it('by common practice: handover 12 to 24 h after the coat, and nothing of a topper', () => {
    // Common practice, no source.
    const profile = commonPracticeProfile()
    expect(() => checkProfile(profile)).not.toThrow()
    const at = milestones(profile, 1000)
    expect(at.handoverSafeAt - 1000).toBe(12 * hour)
    expect(at.handoverAdvisedAt - 1000).toBe(24 * hour)
    expect(advisedByPracticeMin).toEqual({ from: 12 * hour, to: 24 * hour })
    expect(at.fullCureEarlyAt - 1000).toBe(7 * day)
    expect(at.fullCureLateAt - 1000).toBe(10 * day)
    expect(Object.values(profile.sources).every(source => source === 'common practice')).toBe(true)
    expect([profile.recoat, profile.topper, at.topperAdvisedAt]).toEqual([null, null, null])
  })

  it('by a data sheet: every figure from the end of the coat', () => {
    expect(milestones(sheetProfile, 5_000)).toEqual({
      tackFreeAt: 5_045,
      topperAdvisedAt: 5_075,
      handoverSafeAt: 5_360,
      handoverAdvisedAt: 5_720,
      keepDryEndsAt: 6_440,
      firstWashAt: 15_080,
      fullCureEarlyAt: 15_080,
      fullCureLateAt: 19_400,
    })
  })

  it('takes another clock', () => {
    const slow = milestones(sheetProfile, 0, age => 2 * age)
    expect(slow.handoverSafeAt).toBe(720)
    expect(slow.topperAdvisedAt).toBe(150)
  })

  // IANA time zone database: the clock changes in these nights.
  it.each([
    ['America/New_York', '2026-03-07', 60],
    ['America/New_York', '2026-10-31', -60],
    ['America/New_York', '2027-03-13', 60],
    ['America/New_York', '2027-11-06', -60],
    ['Europe/Berlin', '2026-03-28', 60],
    ['Europe/Berlin', '2026-10-24', -60],
    ['Europe/Berlin', '2027-03-27', 60],
    ['Europe/Berlin', '2027-10-30', -60],
  ])('last their elapsed hours over the clock-change night (%s, %s)', (zone, date, skipped) => {
    const coatEndAt = atWall(date, 17 * 60 + 30, zone)
    const { handoverSafeAt } = milestones(commonPracticeProfile(), coatEndAt)
    expect(handoverSafeAt).toBe(coatEndAt + 12 * hour)
    expect(wallMinuteOf(handoverSafeAt, zone)).toBe(5 * 60 + 30 + skipped)
  })
})
