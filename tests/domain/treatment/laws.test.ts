import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import type { TreatmentStep } from '../../../main/domain/shop/index.ts'
import { type LaidStep, layOut } from '../../../main/domain/treatment/index.ts'
import { coating, input, step, topper, treatment } from './samples.ts'

/** Profiles with figures on and off the grid; windows are never so narrow that no grid point lies in them. */
const profile = fc
  .record({
    tackFreeMin: fc.integer({ min: 0, max: 200 }),
    recoatMin: fc.integer({ min: 20, max: 120 }),
    recoatRoom: fc.integer({ min: 30, max: 300 }),
    topperMin: fc.integer({ min: 240, max: 400 }),
    topperRoom: fc.option(fc.integer({ min: 30, max: 400 })),
    handoverMin: fc.integer({ min: 240, max: 1500 }),
    keepDryMin: fc.integer({ min: 0, max: 1440 }),
  })
  .map(({ recoatMin, recoatRoom, topperMin, topperRoom, ...rest }) => ({
    ...rest,
    topper: {
      minMin: topperMin,
      advisedMin: topperMin,
      maxMin: topperRoom === null ? null : topperMin + topperRoom,
      productIds: ['veil'],
    },
    recoat: { minMin: recoatMin, maxMin: recoatMin + recoatRoom },
  }))

const minutes = fc.integer({ min: 1, max: 200 })
const wait = fc.option(fc.integer({ min: 0, max: 90 }), { freq: 4 })
const anyStep = (stage: TreatmentStep['stage'], productIds: (string | null)[]) =>
  fc
    .record({
      name: fc.constantFrom('Wash', 'Clay', 'Wipe', 'Look'),
      needs:
        stage === 'finish'
          ? fc.constantFrom('wet' as const, 'clean' as const)
          : fc.constant('clean' as const),
      minutes,
      waitMin: wait,
      splittable: stage === 'correct' ? fc.boolean() : fc.constant(false),
      productId: fc.constantFrom(...productIds),
    })
    .map(each => step({ ...each, stage }))

const anyTreatment = fc
  .tuple(
    fc.array(anyStep('prepare', [null]), { maxLength: 2 }),
    fc.array(anyStep('correct', [null]), { maxLength: 1 }),
    fc.array(anyStep('coat', ['one', 'two', null]), { maxLength: 3 }),
    fc.array(anyStep('topper', ['veil']), { maxLength: 1 }),
    fc.array(anyStep('finish', [null]), { maxLength: 1 }),
  )
  .map(parts => treatment(...parts.flat()))

/** One way the chain can go that keeps its waits: each step as late as `lag` says, split work as long as that. */
function goes(steps: readonly LaidStep[], lag: (i: number) => number) {
  let at = 0
  return steps.map((each, i) => {
    const least = each.waitMin ?? 0
    const from = at + Math.min(least + lag(i) * 15, each.waitMax ?? Number.POSITIVE_INFINITY)
    at = from + each.minutes + (each.kind === 'work' && each.split ? lag(i) * 45 : 0)
    return { ...each, from, to: at }
  })
}

test('However a laid chain goes, it keeps every figure of every coat', () => {
  const laid = fc.record({
    treatments: fc.array(anyTreatment, { minLength: 1, maxLength: 3 }),
    one: profile,
    two: profile,
    veil: profile,
    rule: fc.constantFrom('minimum' as const),
    lags: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 30, maxLength: 30 }),
  })
  let went = 0
  fc.assert(
    fc.property(laid, ({ treatments, one, two, veil, rule, lags }) => {
      const products = { one: coating(one), two: { ...coating(two), name: 'Second' }, veil: topper(veil) }
      let steps: LaidStep[]
      try {
        steps = layOut(input(treatments, products, { handoverRule: rule })).steps
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal)
        return
      }
      went++
      const way = goes(steps, i => lags[i % lags.length]!)
      const end = way.at(-1)!.to
      const profiles = { one, two, veil }
      way.forEach((coat, i) => {
        if (coat.kind === 'hold' || coat.productId === null) return
        const { tackFreeMin, handoverMin, keepDryMin } = profiles[coat.productId as keyof typeof profiles]
        expect(end - coat.to).toBeGreaterThanOrEqual(handoverMin)
        for (const later of way.slice(i + 1)) {
          const age = later.from - coat.to
          // A hold in another bay is a move too; one inside a hold may come `moveAfter` into it.
          if (!later.sameBay) expect(age).toBeGreaterThanOrEqual(tackFreeMin)
          if (later.kind === 'hold' && later.moveAfter != null)
            expect(age + later.moveAfter).toBeGreaterThanOrEqual(tackFreeMin)
          if (later.kind === 'work' && later.needs === 'wet') expect(age).toBeGreaterThanOrEqual(keepDryMin)
        }
      })
    }),
    { numRuns: 2000 },
  )
  expect(went).toBeGreaterThan(500)
})

test('However a laid chain goes, layers and toppers of one treatment stay within their windows', () => {
  const one = fc.record({
    treatment: anyTreatment,
    one: profile,
    two: profile,
    veil: profile,
    lags: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 30, maxLength: 30 }),
  })
  let windows = 0
  fc.assert(
    fc.property(one, ({ treatment, one, two, veil, lags }) => {
      const products = { one: coating(one), two: { ...coating(two), name: 'Second' }, veil: topper(veil) }
      let steps: LaidStep[]
      try {
        steps = layOut(input([treatment], products)).steps
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal)
        return
      }
      const profiles = { one, two, veil }
      const coats = goes(steps, i => lags[i % lags.length]!).filter(
        each => each.kind === 'work' && each.productId !== null,
      )
      coats.slice(1).forEach((next, i) => {
        const coat = coats[i]!
        const { recoat, topper } = profiles[coat.productId as keyof typeof profiles]
        const { minMin, maxMin } = next.stage === 'topper' ? topper : recoat
        // Sixteen panels, each from its own end to its own next turn.
        for (let panel = 0; panel < 16; panel++) {
          const waited =
            next.from + (panel / 16) * next.minutes - (coat.to - (1 - (panel + 1) / 16) * coat.minutes)
          expect(waited).toBeGreaterThanOrEqual(minMin)
          if (maxMin !== null) expect(waited).toBeLessThanOrEqual(maxMin)
        }
        windows++
      })
    }),
    { numRuns: 2000 },
  )
  expect(windows).toBeGreaterThan(500)
})
