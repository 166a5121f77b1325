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
  // Layers of 90 and 75 minutes: every panel keeps this window with 60 to 240 minutes between them.
  const recoat = { minMin: 125, maxMin: 330 }
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

/** A sheet's topper window, for the topper of these cases. */
const topped = (minMin: number, maxMin: number | null = null) => ({
  topper: { minMin, advisedMin: minMin, maxMin, productIds: ['veil'] },
})

test('A topper goes on where the coating’s sheet gives its time and names it, and nowhere else', () => {
  const chain = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }))
  const lay = (change: object) => layOut(input([chain], { two: coating(change), veil: topper() }))
  expect(() => lay({})).toThrow(
    expect.objectContaining({ code: 'no-topper', field: 'treatments.0.steps.1.productId' }),
  )
  const other = { topper: { minMin: 60, advisedMin: 60, maxMin: null, productIds: ['other'] } }
  expect(() => lay(other)).toThrow(
    expect.objectContaining({ code: 'topper-not-allowed', field: 'treatments.0.steps.1.productId' }),
  )
  expect(() => lay(topped(60))).not.toThrow()
})

test('A topper waits until its window is open for every panel', () => {
  // 45 minutes of topper: the last panel's turn begins seven eighths into it, after 39.
  const products = { two: coating(topped(279)), veil: topper() }
  const veiled = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }))
  const { steps } = layOut(input([veiled], products))
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
    two: coating({ handoverMin: 1000, handoverAdvisedMin: 1000, ...topped(279) }),
    veil: topper({ tackFreeMin: 30, handoverMin: 240 }),
  }
  const veiled = treatment(coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', minutes: 45 }))
  const { steps } = layOut(input([veiled], products))
  // 1000 after the coat, less 240 of hold and 45 of topper: 715, on the grid 720.
  expect(steps.at(-1)).toMatchObject({ kind: 'hold', minutes: 720, productId: 'two', moveAfter: 30 })
})

test('A topper that must follow soon says how soon, counted from the end of the hold', () => {
  // Common practice, no source: some systems want the topper within 1 to 2 h; such figures come from the data sheet.
  // A coat of 60 minutes and a topper of 60: with a wait of 8 to 60 between them every panel waits 60 to 120.
  const soon = coating({ ...topped(60, 120), tackFreeMin: 15 })
  const veiled = treatment(
    coat({ minutes: 60 }),
    step({ name: 'Topper', stage: 'topper', productId: 'veil' }),
  )
  const { steps, notes } = layOut(input([veiled], { two: soon, veil: topper() }))
  expect(steps[1]).toMatchObject({ kind: 'hold', minutes: 15, waitMax: 0 })
  expect(steps[2]).toMatchObject({ kind: 'work', waitMax: 45, sameBay: false })
  expect(notes).toEqual([
    '"Topper" must start within 1 h of the end of "First layer" (Ovrel Two), so that the first and the last panel ' +
      'keep their window.',
  ])
})

test('Layers too long for a window are refused, with what would do instead', () => {
  // The first panel of a 90-minute layer is over before a window of 80 minutes lets the second begin.
  const two = coating({ recoat: { minMin: 30, maxMin: 80 }, missedRecoat: 'Abrade.' })
  expect(() => layOut(input([treatment(coat(), coat({ minutes: 60 }))], { two }))).toThrow(
    expect.objectContaining({
      code: 'layers-too-long',
      message: expect.stringContaining(
        'some panel waits 10 min longer than its window is open; send more people',
      ),
    }),
  )
})

test('A 105-minute and a 90-minute layer with a limit of 180 minutes may wait 75, not 180', () => {
  const two = coating({ recoat: { minMin: 60, maxMin: 180 }, missedRecoat: 'Abrade.' })
  const { steps } = layOut(input([treatment(coat({ minutes: 105 }), coat())], { two }))
  expect(steps[1]).toMatchObject({ kind: 'work', waitMax: 75 })
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
    'Cure until safe to touch 240',
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
    ['Cure until safe to touch', 60, true],
    ['Wheels', 45, false],
    // 600 less the 60 and 45 that have passed: 495.
    ['Cure before pick-up', 495, true],
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

const recoated = coating({
  recoat: { minMin: 60, maxMin: 240 },
  missedRecoat: 'Abrade.',
  ...topped(240, 600),
})
const veil = (change: object) => step({ name: 'Topper', stage: 'topper', productId: 'veil', ...change })
test.each([
  ['a wait shorter than the recoat minimum', 'waitMax', coat({ minutes: 30, waitMax: 15 })],
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

test('A car leaves when it may get wet, and sooner only under a cover that somebody confirmed', () => {
  // Dry for a day and handover after 4 h: common practice, no source.
  const last = (leaving: 'dry' | 'covered', handoverRule: 'minimum' | 'advised' = 'minimum') =>
    layOut(input([treatment(coat())], { two: coating() }, { leaving, handoverRule })).steps.at(-1)!.minutes
  expect(last('covered')).toBe(240)
  expect(last('dry')).toBe(1440)
  expect(last('dry', 'advised')).toBe(1440)
})
