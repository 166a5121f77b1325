/** The demo's figures are plausible to the trade. Common practice, no source, where none is named. */
import { describe, expect, it } from 'vitest'
import { labelFromCodes } from '../../../main/domain/hazard/index.ts'
import { sizeClasses } from '../../../main/domain/shop/index.ts'
import { demoProducts } from '../../../main/services/demo/productData.ts'
import { demoStock } from '../../../main/services/demo/shelfData.ts'
import { demoDraws, demoSheets } from '../../../main/services/demo/shelfRecipes.ts'
import { demoTreatments } from '../../../main/services/demo/treatmentData.ts'

const stepsOf = (id: string) => demoTreatments.find(each => each.id === id)?.steps ?? []
const allSteps = demoTreatments.flatMap(each => each.steps)
const amountsOf = (productId: string) =>
  allSteps
    .flatMap(step => demoDraws(step))
    .filter(line => line.productId === productId)
    .map(line => line.bySize.medium.centi / 100)
const sheetOf = (productId: string) => demoSheets.find(each => each.productId === productId)

describe('what the demo uses', () => {
  it('takes 300 to 500 ml of iron remover on a medium car, ready to use and about neutral', () => {
    for (const amount of amountsOf('demo-iron')) {
      expect(amount).toBeGreaterThanOrEqual(300)
      expect(amount).toBeLessThanOrEqual(500)
    }
    expect(amountsOf('demo-iron').length).toBeGreaterThan(0)
    expect(sheetOf('demo-iron')?.ph).toBeGreaterThanOrEqual(6)
    expect(sheetOf('demo-iron')?.ph).toBeLessThanOrEqual(8)
    expect(sheetOf('demo-iron')?.storageGroup).not.toBe('acid')
  })

  it('uses no pad up, and throws the cloths of each coat away', () => {
    expect(amountsOf('demo-pads')).toEqual([])
    for (const step of allSteps.filter(each => each.stage === 'coat'))
      expect(demoDraws(step).map(line => line.productId)).toContain('demo-cloths')
    for (const step of allSteps.filter(each => each.stage === 'wipe'))
      expect(demoDraws(step).map(line => line.productId)).not.toContain('demo-cloths')
  })

  it('weighs a dilute wipe nearly as water', () => {
    // Isopropanol is 0.785 g/ml, a fifth of it in water 0.97 to 0.98 (published tables of the mixture, from memory).
    const { density } = demoStock.find(each => each.productId === 'demo-wipe') ?? {}
    expect(density).toBeGreaterThanOrEqual(0.96)
    expect(density).toBeLessThanOrEqual(0.98)
  })
})

describe('what the demo sells', () => {
  it('corrects in 10 to 18 h on paint in good condition', () => {
    for (const size of sizeClasses) {
      const minutes = stepsOf('demo-two-step')
        .filter(step => step.stage === 'correct')
        .reduce((sum, step) => sum + step.minutes[size], 0)
      expect(minutes).toBeGreaterThanOrEqual(10 * 60)
      expect(minutes).toBeLessThanOrEqual(18 * 60)
    }
  })

  it.each(['demo-one-layer', 'demo-two-layers', 'demo-layer-topper'])('refines the paint before %s', id => {
    const stages = stepsOf(id).map(step => step.stage)
    expect(stages).toContain('correct')
    expect(stages.indexOf('correct')).toBeLessThan(stages.indexOf('coat'))
  })

  it('hands over 12 to 24 h after a coat, sooner only where its sheet says so', () => {
    for (const { name, cureProfile } of demoProducts) {
      if (!cureProfile || cureProfile.sources.handoverMin === 'data sheet') continue
      expect([name, cureProfile.handoverMin, cureProfile.handoverAdvisedMin]).toEqual([name, 720, 1440])
    }
  })
})

describe('the demo’s data sheets', () => {
  const codesOf = (productId: string) => sheetOf(productId)?.hazardCodes ?? []

  it('say of a coating what a coating does, not what a solvent does', () => {
    for (const { id, kind } of demoProducts)
      if (kind === 'coating' && sheetOf(id)) expect(codesOf(id)).not.toEqual(codesOf('demo-wipe'))
    // 29 CFR 1910.106(a)(19), category 3: flash point from 23 to 60 °C, as a fifth of isopropanol in water has.
    expect(codesOf('demo-wipe')).toContain('H226')
  })

  it('bear the signal word their statements ask for', () => {
    for (const { productId, hazardCodes, signalWord } of demoSheets) {
      const worked = labelFromCodes(hazardCodes, 'us-osha', signalWord)
      expect([productId, worked.signalWord ?? 'none']).toEqual([productId, signalWord])
    }
  })
})
