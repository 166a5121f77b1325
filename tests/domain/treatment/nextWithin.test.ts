import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import { promise } from '../../../main/domain/schedule/index.ts'
import { layOut } from '../../../main/domain/treatment/index.ts'
import { coating, input, step, topper, treatment } from './samples.ts'

// A wiped panel is coated within 30 to 60 minutes: common practice, no source. The shop sets its own.
const wipe = (name = 'Panel wipe', change: object = {}) =>
  step({ name, stage: 'wipe', minutes: 30, nextWithinMin: 45, missed: 'again', ...change })
const coat = (name = 'Layer', productId = 'two') => step({ name, stage: 'coat', productId, minutes: 90 })

test('A night between wipe and coat is impossible: the wipe waits for the morning with its coat', () => {
  const { steps } = layOut(input([treatment(wipe(), coat())], { two: coating() }))
  expect(steps.slice(0, 2)).toMatchObject([{ split: false, missed: 'again' }, { waitMax: 45 }])
  const day = (n: number) => ({ from: n * 1440 + 480, to: n * 1440 + 1080 })
  const problem = {
    grid: 15,
    horizon: 5 * 1440,
    open: [0, 1, 2, 3, 4].map(day),
    bays: [{ id: 'b', can: ['clean', 'cure'], closed: [] }],
    crew: [],
    fixed: [],
    // From 16:45 the wipe is done at 17:15, and a coat of 90 minutes would end after closing at 18:00.
    newJob: { id: 'new', release: 16 * 60 + 45, asked: 0, steps },
  }
  const offer = promise(problem).soonest
  if (!offer.feasible) throw new Error('the next morning is free')
  expect(offer.plan.steps.slice(0, 2).map(({ start }) => start)).toEqual([1440 + 480, 1440 + 510])
})

test('A wipe that may pause at closing does not: what may not wait for its coat is not begun on one day and ended on another', () => {
  const { steps } = layOut(
    input([treatment(wipe('Panel wipe', { splittable: true }), coat())], { two: coating() }),
  )
  expect(steps[0]).toMatchObject({ name: 'Panel wipe', split: false })
  const free = step({ name: 'Panel wipe', stage: 'wipe', minutes: 30, splittable: true })
  expect(layOut(input([treatment(free, coat())], { two: coating() })).steps[0]).toMatchObject({ split: true })
})

test('Wheels and paint of one visit are each wiped right before their own coat', () => {
  const rim = { ...coating({ tackFreeMin: 60 }), name: 'Ovrel Rim' }
  const wheels = treatment(wipe('Wipe wheels'), coat('Wheels', 'rim'))
  const { steps } = layOut(input([wheels, treatment(wipe(), coat())], { two: coating(), rim }))
  expect(steps.map(each => each.name)).toEqual([
    'Wipe wheels',
    'Wheels',
    'Cure until safe to touch',
    'Panel wipe',
    'Layer',
    'Cure before pick-up',
  ])
})

test('A coat that has to wait for the one before is wiped after the wait, not before it', () => {
  const products = {
    two: coating({
      tackFreeMin: 60,
      topper: { minMin: 279, advisedMin: 279, maxMin: null, productIds: ['veil'] },
    }),
    veil: topper(),
  }
  const veiled = treatment(
    wipe('Wipe for the topper', { stage: 'topper', productId: null }),
    step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }),
  )
  const { steps } = layOut(input([treatment(wipe(), coat()), veiled], products))
  // 279 less the eighth of the topper that its last panel comes later, less the 30 of the wipe, on the grid.
  expect(steps.slice(2, 5).map(each => [each.name, each.minutes])).toEqual([
    ['Cure before the topper', 210],
    ['Wipe for the topper', 30],
    ['Topper', 45],
  ])
})

test('A wipe of one name in two treatments is done before each of their coats, not once for both', () => {
  const rim = { ...coating({ tackFreeMin: 60 }), name: 'Ovrel Rim' }
  const wheels = treatment(wipe('Panel wipe', { nextWithinMin: 30 }), coat('Wheels', 'rim'))
  const laid = layOut(input([treatment(wipe(), coat()), wheels], { two: coating({ tackFreeMin: 60 }), rim }))
  expect(laid.steps.slice(0, 5).map(each => [each.name, each.waitMax])).toEqual([
    ['Panel wipe', null],
    ['Layer', 45],
    ['Cure until safe to touch', 0],
    ['Panel wipe', null],
    ['Wheels', 30],
  ])
})

test('However many treatments are sold together, no limit is ever laid wider than its step says', () => {
  const anyTreatment = fc.record({
    within: fc.integer({ min: 0, max: 90 }),
    name: fc.constantFrom('Wipe A', 'Wipe B'),
    productId: fc.constantFrom('one', 'two'),
  })
  let seen = 0
  fc.assert(
    fc.property(fc.array(anyTreatment, { minLength: 1, maxLength: 3 }), sold => {
      const treatments = sold.map(({ name, within, productId }) =>
        treatment(
          step({ name: 'Wash' }),
          wipe(name, { nextWithinMin: within }),
          coat(`${name} ${within}`, productId),
        ),
      )
      let steps: ReturnType<typeof layOut>['steps']
      try {
        steps = layOut(input(treatments, { one: coating(), two: coating({ tackFreeMin: 30 }) })).steps
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal)
        return
      }
      for (const [i, each] of steps.entries()) {
        if (each.stage !== 'wipe') continue
        // The coat that follows is the wipe's own, and bears its limit in its name.
        expect(steps[i + 1]?.name).toBe(`${each.name} ${steps[i + 1]?.waitMax}`)
        seen++
      }
    }),
  )
  expect(seen).toBeGreaterThan(50)
})
