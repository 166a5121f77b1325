import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ClockMilestones } from '../../../main/domain/cure/clock.ts'
import {
  clockMilestones,
  commonPracticeProfile,
  cureClock,
  milestoneNames,
  noticesSince,
  ruleOf,
} from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

const at20 = (profile = sheetProfile): ClockMilestones =>
  clockMilestones(profile, cureClock(profile, 0, { readings: [], usualC: 20, nowAt: 0 }))
// The sheet: topper from 60, advised 75, closed 120; handover 360.
const milestones = at20()
const kinds = (seenAt: number, nowAt: number) =>
  noticesSince(milestones, seenAt, nowAt).map(({ kind }) => kind)

describe('notices', () => {
  it('come at the topper window, 20 minutes before it closes, and at release', () => {
    expect(kinds(59, 60)).toEqual(['topper opens'])
    expect(kinds(60, 99)).toEqual([])
    expect(kinds(99, 100)).toEqual(['topper closes soon'])
    expect(kinds(99, 119)).toEqual(['topper closes soon'])
    expect(kinds(99, 120)).toEqual(['topper closed'])
    expect(kinds(100, 359)).toEqual([])
    expect(kinds(359, 360)).toEqual(['release'])
  })

  it('tell what a computer slept through, as late, once', () => {
    expect(noticesSince(milestones, 50, 500)).toEqual([
      { kind: 'topper opens', at: 60, late: true },
      { kind: 'topper closed', at: 120, late: true },
      { kind: 'release', at: 360, late: true },
    ])
    expect(noticesSince(milestones, 500, 510)).toEqual([])
    expect(noticesSince(milestones, 359, 365)).toEqual([{ kind: 'release', at: 360, late: false }])
  })

  it('come once each, however the time is cut', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 600 }), { maxLength: 12 }), cuts => {
        const marks = [-1, ...cuts.sort((a, b) => a - b), 600]
        const told = marks.slice(1).flatMap((nowAt, i) => kinds(marks[i]!, nowAt))
        const one = (kind: string) => told.filter(name => name.startsWith(kind)).length
        expect([one('topper opens'), one('topper close'), one('release')]).toEqual([1, 1, 1])
      }),
    )
  })

  it('say nothing of a window that does not close', () => {
    const open = at20(commonPracticeProfile())
    expect(noticesSince(open, -1, 100_000).map(({ kind }) => kind)).toEqual(['topper opens', 'release'])
  })
})

describe('the rule behind a time', () => {
  it('says the figure, where it is from, and who decides', () => {
    expect(ruleOf(commonPracticeProfile(), 'handoverSafe')).toEqual({
      ageMin: 240,
      source: 'common practice',
      words: 'Handover at the earliest: 4 h of cure at 20 °C, common practice. The data sheet decides.',
    })
    expect(ruleOf(sheetProfile, 'topperAdvised')!.words).toBe(
      'Topper advised: 1 h 15 min of cure at 20 °C, from the data sheet. The data sheet decides.',
    )
    expect(ruleOf(sheetProfile, 'keepDryEnds')!.words).toMatch(/: 24 h of cure/)
    expect(ruleOf({ ...sheetProfile, keepDryMin: 2910 }, 'keepDryEnds')!.words).toMatch(/: 48 h 30 min of/)
    expect(ruleOf(sheetProfile, 'tackFree')!.words).toMatch(/: 45 min of cure/)
    expect(ruleOf(sheetProfile, 'fullCureLate')!.words).toMatch(/: 10 days of cure/)
    expect(ruleOf(commonPracticeProfile(), 'recoatOpens')).toBeNull()
  })

  it('never declares a coating safe', () => {
    for (const name of milestoneNames) expect(ruleOf(sheetProfile, name)!.words).not.toMatch(/\bsafe/i)
  })
})
