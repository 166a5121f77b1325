import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { type LaidStep, layOut, type TreatmentTemplate } from '../../../main/domain/treatment/index.ts'
import { coating, input, step, topper, treatment } from './samples.ts'

const coat = (change: Parameters<typeof step>[0] = {}) =>
  step({ name: 'First layer', stage: 'coat', skill: 'coat', productId: 'two', minutes: 90, ...change })

test('A two-layer coating becomes the chain of the published scheduling case p02', () => {
  // Source: tests/reference/scheduling/promise.json, an invented case whose optimum was proven with CP-SAT.
  const cases = JSON.parse(readFileSync('tests/reference/scheduling/promise.json', 'utf8')).cases
  const published = cases.find((each: { id: string }) => each.id === 'p02').newJob.steps
  const layers = treatment(
    step({ name: 'Wash', needs: 'wet', skill: 'wash' }),
    step({
      name: 'Polish',
      stage: 'correct',
      needs: 'polish',
      skill: 'polish',
      minutes: 240,
      splittable: true,
    }),
    coat(),
    coat({ name: 'Second layer', minutes: 75 }),
  )
  const recoat = { minMin: 60, maxMin: 240 }
  const products = { two: coating({ recoat, tackFreeMin: 240, handoverMin: 900, missedRecoat: 'Abrade.' }) }
  // The format leaves out what says nothing.
  const full = (each: Record<string, unknown>) => ({
    sameBay: false,
    waitMax: null,
    ...each,
    waitMin: each.waitMin ?? 0,
  })
  const engine = ({ name, stage, productId, ...rest }: LaidStep) => {
    if (rest.kind === 'work') return full({ ...rest })
    const { moveAfter, ...hold } = rest
    return full(hold)
  }
  expect(layOut(input([layers], products)).steps.map(engine)).toEqual(published.map(full))
})

test('Handover is never before 4 h after the coat, and advised from 12 h: common practice, no source', () => {
  const products = { two: coating() }
  const last = (rule: 'minimum' | 'advised') =>
    layOut(input([treatment(coat())], products, { handoverRule: rule })).steps.at(-1)!
  expect(last('minimum')).toMatchObject({ kind: 'hold', minutes: 4 * 60, waitMax: 0, sameBay: true })
  expect(last('advised').minutes).toBeGreaterThanOrEqual(12 * 60)
  expect(last('advised').minutes).toBeLessThanOrEqual(24 * 60)
})

test('A topper waits 4 h after the coat at the least: common practice, no source', () => {
  const products = { two: coating(), veil: topper() }
  const topped = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }))
  const { steps } = layOut(input([topped], products))
  expect(steps.map(each => [each.kind, each.minutes])).toEqual([
    ['work', 90],
    ['hold', 240],
    ['work', 45],
    // The topper's own 4 h; of the coat's handover figure, nothing is left by then.
    ['hold', 240],
  ])
})

test('What has surely passed by the topper counts toward the coat, and the longer of the two is kept', () => {
  const products = {
    two: coating({ handoverMin: 1000, handoverAdvisedMin: 1000 }),
    veil: topper({ tackFreeMin: 30, handoverMin: 240 }),
  }
  const topped = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }))
  const { steps } = layOut(input([topped], products))
  // 1000 after the coat, less 240 of hold and 45 of topper: 715, on the grid 720.
  expect(steps.at(-1)).toMatchObject({ kind: 'hold', minutes: 720, productId: 'two', moveAfter: 30 })
})

test('A topper that must follow soon says how soon, counted from the end of the hold', () => {
  // Common practice, no source: some systems want the topper within 1 to 2 h; such figures come from the data sheet.
  const soon = coating({ topperMin: 60, topperAdvisedMin: 60, topperMaxMin: 120, tackFreeMin: 60 })
  const topped = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil' }))
  const { steps, notes } = layOut(input([topped], { two: soon, veil: topper() }))
  expect(steps[1]).toMatchObject({ kind: 'hold', minutes: 60, waitMax: 0 })
  expect(steps[2]).toMatchObject({ kind: 'work', waitMax: 60, sameBay: false })
  expect(notes).toEqual(['"Topper" must start within 2 h of the end of "First layer" (Ovrel Two).'])
})

test('The car may be moved inside a hold only from tack-free on', () => {
  const { steps } = layOut(input([treatment(coat())], { two: coating({ tackFreeMin: 90 }) }))
  expect(steps[1]).toMatchObject({ kind: 'hold', minutes: 240, moveAfter: 90, sameBay: true })
  const never = layOut(input([treatment(coat())], { two: coating() })).steps
  expect(never[1]).toMatchObject({ kind: 'hold', minutes: 240, moveAfter: null })
})

test('A step in water waits until the coat may get wet', () => {
  const rinsed = treatment(coat(), step({ name: 'Rinse', stage: 'finish', needs: 'wet' }))
  const { steps } = layOut(input([rinsed], { two: coating({ keepDryMin: 1440 }) }))
  expect(steps[1]).toMatchObject({ kind: 'hold', minutes: 1440 })
  expect(steps[2]).toMatchObject({ name: 'Rinse', sameBay: false })
  expect(steps).toHaveLength(3)
})

test('Hands-on minutes follow the size class and the condition, rounded up to the grid', () => {
  const polish = {
    ...step({ stage: 'correct', byCondition: true }),
    minutes: { small: 60, medium: 65, large: 0, xl: 100 },
  }
  const minutes = (change: object) => layOut(input([treatment(step(), polish)], {}, change)).steps[1]?.minutes
  expect(minutes({ sizeClass: 'small' })).toBe(60)
  expect(minutes({ sizeClass: 'medium' })).toBe(75)
  expect(minutes({ sizeClass: 'xl', condition: 'worn' })).toBe(135)
  expect(minutes({ sizeClass: 'small', condition: 'worn' })).toBe(75)
  expect(minutes({ sizeClass: 'large' })).toBeUndefined()
  // 60 × 1.1 is a little more than 66 in binary fractions, which must not cost a grid step.
  const factors = { good: 1.1, worn: 1.25, heavy: 1.5 }
  expect(minutes({ sizeClass: 'small', conditionFactors: factors, gridMin: 6 })).toBe(66)
})

test('Preparation that several treatments share is done once, the longest time kept', () => {
  const names = (...treatments: ReturnType<typeof treatment>[]) =>
    layOut(input(treatments, { two: coating() })).steps.map(each => `${each.name} ${each.minutes}`)
  const wash = (minutes: number) => step({ name: 'Wash', needs: 'wet', minutes })
  const first = treatment(wash(45), step({ name: 'Tape' }), coat())
  const second = treatment(
    step({ name: 'Inspect' }),
    wash(60),
    step({ name: 'Clay' }),
    step({ name: 'Seats', stage: 'finish' }),
  )
  expect(names(first, second)).toEqual([
    'Inspect 60',
    'Wash 60',
    'Clay 60',
    'Tape 60',
    'First layer 90',
    'Cure to tack-free 240',
    'Seats 60',
  ])
  // Two washes of one treatment stay two; only the first is shared.
  expect(names(treatment(wash(45), step({ name: 'Clay' }), wash(30)), treatment(wash(60)))).toEqual([
    'Wash 60',
    'Clay 60',
    'Wash 30',
  ])
})

test('Coats of two treatments keep apart until the first is tack-free, and both hold the car', () => {
  const products = {
    two: coating({ tackFreeMin: 60, handoverMin: 600 }),
    rim: { ...coating({ tackFreeMin: 30 }), name: 'Ovrel Rim' },
  }
  const wheels = treatment(coat({ name: 'Wheels', productId: 'rim', minutes: 45 }))
  const { steps } = layOut(input([treatment(coat()), wheels], products))
  expect(steps.map(each => [each.name, each.minutes, each.sameBay])).toEqual([
    ['First layer', 90, false],
    ['Cure to tack-free', 60, true],
    ['Wheels', 45, false],
    // 600 less the 60 and 45 that have passed: 495.
    ['Cure to handover', 495, true],
  ])
})

test('Paint that is never polished is refused a correction, in words', () => {
  const correction = treatment(step({ name: 'One-step correction', stage: 'correct' }))
  for (const finish of ['matte', 'satin', 'film'] as const)
    expect(() => layOut(input([correction], {}, { finish }))).toThrow(
      expect.objectContaining({
        code: 'never-polished',
        field: 'treatmentIds',
        message: expect.stringContaining(`a ${finish} finish is never polished`),
      }),
    )
  const compound = { name: 'Cut', kind: 'compound' as const, cureProfile: null }
  const hidden = treatment(step({ name: 'Spot work', productId: 'cut' }))
  expect(() => layOut(input([hidden], { cut: compound }, { finish: 'matte' }))).toThrow('never polished')
  expect(layOut(input([hidden], { cut: compound })).steps).toHaveLength(1)
})

test('A coat nobody knows the cure of cannot be promised', () => {
  const unknown = { ...coating(), cureProfile: null }
  expect(() => layOut(input([treatment(coat())], { two: unknown }))).toThrow(
    expect.objectContaining({ code: 'no-cure-profile', field: 'treatments.0.steps.0.productId' }),
  )
  const elsewhere = treatment(coat({ stage: 'finish' }))
  expect(() => layOut(input([elsewhere], { two: coating() }))).toThrow('put the step into the stage')
})

test('Nothing chosen, and nothing to do for this size, are refused', () => {
  expect(() => layOut(input([]))).toThrow(expect.objectContaining({ field: 'treatmentIds' }))
  expect(() => layOut(input([treatment(step({ minutes: 0 }))]))).toThrow('of class medium')
})

const recoated = coating({ recoat: { minMin: 60, maxMin: 240 }, missedRecoat: 'Abrade.', topperMaxMin: 600 })
const veil = (change: object) => step({ name: 'Topper', stage: 'topper', productId: 'veil', ...change })
test.each([
  ['a wait shorter than the recoat minimum', 'waitMax', coat({ waitMax: 30 })],
  ['a wait longer than the recoat maximum', 'waitMin', coat({ waitMin: 300 })],
  ['a topper due before its minimum', 'waitMax', veil({ waitMax: 60 })],
  ['a topper after its maximum', 'waitMin', veil({ waitMin: 700 })],
])('Waits that contradict the profile are refused: %s', (_, field, next) => {
  const products = { two: recoated, veil: topper() }
  expect(() => layOut(input([treatment(coat(), next)], products))).toThrow(
    expect.objectContaining({ code: 'waits-contradict', field: `treatments.0.steps.1.${field}` }),
  )
})

test('A second layer no data sheet names is refused', () => {
  expect(() => layOut(input([treatment(coat(), coat())], { two: coating() }))).toThrow(
    expect.objectContaining({ code: 'no-second-layer', field: 'treatments.0.steps.1.productId' }),
  )
})

test('A coat never pauses at closing', () => {
  expect(layOut(input([treatment(coat({ splittable: true }))], { two: coating() })).steps[0]).toMatchObject({
    kind: 'work',
    split: false,
  })
})

test('a treatment that needs two people sends two to each step that takes somebody, also to a shared one', () => {
  const alone = treatment(
    step({ name: 'Wash', skill: 'wash' }),
    step({ name: 'Lift', skill: 'wash', crew: 3 }),
    step({ name: 'Air', skill: null }),
  )
  const pair = { ...alone, needsTwoPeople: true }
  const crews = (treatments: TreatmentTemplate[]) =>
    layOut(input(treatments)).steps.map(each => each.kind === 'work' && each.crew)
  expect(crews([alone])).toEqual([1, 3, 0])
  expect(crews([pair])).toEqual([2, 3, 0])
  expect(crews([alone, pair])).toEqual([2, 3, 0])
})
