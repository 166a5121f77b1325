import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ClockMilestones } from '../../../main/domain/cure/clockMilestones.ts'
import {
  clockMilestones,
  commonPracticeProfile,
  milestoneNames,
  noticesSince,
  ruleOf,
} from '../../../main/domain/cure/index.ts'
import { laidAt, sheetProfile } from './profiles.ts'

const at20 = (profile = sheetProfile): ClockMilestones => clockMilestones(laidAt(profile, 0))
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

  it('tell a window that closes before it opens as closed, at its end, and nothing else of it', () => {
    const shut = clockMilestones(laidAt({ ...sheetProfile, rate: { rule: 'doubling' } }, 0, { usualC: 0 }))
    expect(noticesSince(shut, -1, 119)).toEqual([])
    expect(noticesSince(shut, -1, 1_000)).toEqual([{ kind: 'topper closed', at: 120, late: true }])
  })

  it('say nothing of a window that does not close', () => {
    const practice = at20(commonPracticeProfile())
    expect(noticesSince(practice, -1, 100_000).map(({ kind }) => kind)).toEqual(['release'])
    const open = at20({ ...sheetProfile, topper: { ...sheetProfile.topper!, maxMin: null } })
    expect(noticesSince(open, -1, 100_000).map(({ kind }) => kind)).toEqual(['topper opens', 'release'])
  })
})

describe('the rule behind a time', () => {
  it('says the figure, where it is from, and who decides', () => {
    expect(ruleOf(commonPracticeProfile(), 'handoverSafe')).toEqual({
      ageMin: 720,
      source: 'common practice',
      words: 'Earliest pick-up: 12 h of cure at 20 °C, common practice. The data sheet decides.',
    })
    expect(ruleOf(sheetProfile, 'topperAdvised')!.words).toBe(
      'Topper advised: 1 h 15 min of cure at 20 °C, from the data sheet. The data sheet decides.',
    )
    expect(ruleOf(sheetProfile, 'keepDryEnds')!.words).toMatch(/: 24 h of cure/)
    // 20 °C are 68 °F.
    for (const name of milestoneNames) {
      expect(ruleOf(sheetProfile, name, 'us')!.words).toContain('at 68 °F')
      expect(ruleOf(sheetProfile, name, 'us')!.words).not.toContain('°C')
    }
    expect(ruleOf({ ...sheetProfile, keepDryMin: 2910 }, 'keepDryEnds')!.words).toMatch(/: 48 h 30 min of/)
    expect(ruleOf(sheetProfile, 'tackFree')!.words).toMatch(/: 45 min of cure/)
    expect(ruleOf(sheetProfile, 'fullCureLate')!.words).toMatch(/: 10 days of cure/)
    for (const name of ['recoatOpens', 'topperOpens', 'topperAdvised', 'topperCloses'] as const)
      expect(ruleOf(commonPracticeProfile(), name)).toBeNull()
  })

  it('says of a window which way each end bends, and what the sheet gives at other temperatures', () => {
    expect(ruleOf(sheetProfile, 'recoatCloses')!.words).toBe(
      'Recoat window closes: 4 h on each panel at 20 °C, from the data sheet. Heat closes it sooner; cold keeps it ' +
        'open longer only by a row of the sheet. The data sheet decides.',
    )
    const row = { window: 'recoat' as const, fromC: 10, toC: 15, minMin: 120, maxMin: 360 }
    expect(ruleOf({ ...sheetProfile, windowRows: [row] }, 'recoatOpens')!.words).toMatch(
      /only by a row of the sheet\. The sheet gives 2 h from 10 °C to 15 °C\. The data sheet decides\.$/,
    )
  })

  it('never declares a coating safe', () => {
    for (const name of milestoneNames) expect(ruleOf(sheetProfile, name)!.words).not.toMatch(/\bsafe/i)
  })
})
