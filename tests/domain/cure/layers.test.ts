import { describe, expect, it } from 'vitest'
import { type CureProfile, cureClock, layeredCoat, milestoneNames } from '../../../main/domain/cure/index.ts'
import type { Layer } from '../../../main/domain/cure/layers.ts'
import { sheetProfile } from './profiles.ts'

const coat = (startAt: number, endAt: number, profile: CureProfile = sheetProfile, celsius = 20): Layer => ({
  profile,
  startAt,
  clock: cureClock(profile, endAt, { readings: [], usualC: celsius, nowAt: 0 }),
})

describe('several coats on one car', () => {
  // The sheet's recoat window: 60 to 240 minutes after the coat.
  it.each([
    [159, 'too early', sheetProfile.missedRecoat],
    [160, 'met', null],
    [340, 'met', null],
    [341, 'too late', sheetProfile.missedRecoat],
  ])('a second coat begun at %s over one finished at 100: %s', (startAt, verdict, asks) => {
    const { findings } = layeredCoat([coat(60, 100), coat(startAt, startAt + 30)])
    expect(findings).toEqual([{ layer: 1, verdict, opensAt: 160, closesAt: 340, asks }])
  })

  it('lets the cold move the window as it moves every other time', () => {
    const doubling = { ...sheetProfile, rate: { rule: 'doubling' as const } }
    const { findings } = layeredCoat([coat(0, 100, doubling, 10), coat(300, 330, doubling, 10)])
    expect(findings[0]).toMatchObject({ verdict: 'met', opensAt: 220, closesAt: 580 })
  })

  it('goes by the last coat for handover and for the next window', () => {
    const last = layeredCoat([coat(400, 430)])
    const both = layeredCoat([coat(60, 100), coat(400, 430)])
    expect(both.milestones).toEqual(last.milestones)
    expect(both.nextWindow).toEqual({ opensAt: 490, closesAt: 670 })
    expect(both.milestones.handoverSafe!.at).toBe(430 + 360)
    expect(last.findings).toEqual([])
  })

  it('waits for a slower product underneath, whose time nothing on top shortens', () => {
    const quick = { ...sheetProfile, handoverMin: 240, handoverAdvisedMin: 300, topperMaxMin: 110 }
    const { milestones } = layeredCoat([coat(60, 100), coat(180, 200, quick)])
    expect(milestones.handoverSafe!.at).toBe(460)
    expect(milestones.handoverAdvised!.at).toBe(820)
    expect(milestones.topperCloses!.at).toBe(310)
  })

  it('says where no window is given, and where none ever opens', () => {
    const silent = { ...sheetProfile, recoat: null }
    const none = layeredCoat([coat(0, 10, silent), coat(90, 120, silent)])
    expect(none.findings[0]).toEqual({
      layer: 1,
      verdict: 'no window given',
      opensAt: null,
      closesAt: null,
      asks: null,
    })
    const frozen: CureProfile = { ...sheetProfile, rate: { rule: 'linear', datumC: 5 } }
    const cold = layeredCoat([coat(0, 10, frozen, 0), coat(90, 120)])
    expect(cold.findings[0]).toMatchObject({ verdict: 'too early', asks: sheetProfile.missedRecoat })
    expect(cold.milestones.handoverSafe).toBeNull()
    expect(milestoneNames.every(name => name in cold.milestones)).toBe(true)
  })
})
