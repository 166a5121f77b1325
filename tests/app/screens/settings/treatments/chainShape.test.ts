import { expect, test } from 'vitest'
import { chainShape, holdPath } from '../../../../../app/screens/settings/treatments/chainShape.ts'
import { commonPracticeProfile, cureCurve } from '../../../../../main/domain/cure/index.ts'
import type { TreatmentStep } from '../../../../../main/domain/shop/index.ts'
import { layOut } from '../../../../../main/domain/treatment/index.ts'
import { washStep } from '../../../../domain/shop/washStep.ts'

const profile = { ...commonPracticeProfile(), recoat: { minMin: 60, maxMin: 180 } }
const products = new Map([['two', { name: 'Ovrel Two', kind: 'coating' as const, cureProfile: profile }]])

const step = (name: string, part: Partial<TreatmentStep> = {}): TreatmentStep => ({
  ...washStep,
  name,
  minutes: { small: 45, medium: 60, large: 90, xl: 120 },
  ...part,
})
const coat = (name: string) => step(name, { stage: 'coat', needs: 'clean', skill: 'coat', productId: 'two' })

const laidOf = (steps: TreatmentStep[]) =>
  layOut({
    treatments: [{ name: 'Two layers', steps }],
    products,
    sizeClass: 'medium',
    finish: 'gloss',
    condition: 'good',
    conditionFactors: { good: 1, worn: 1.2, heavy: 1.5 },
    gridMin: 15,
    handoverRule: 'minimum',
    leaving: 'dry',
  }).steps

const twoLayers = [step('Wash'), coat('First layer'), coat('Second layer')]

test('holds stand where their coats put them, in the bay of their coat', () => {
  const runs = chainShape(twoLayers, 'medium', laidOf(twoLayers))
  expect(runs.map(run => run.needs)).toEqual(['wet', 'clean'])
  expect(runs[0]!.pieces.map(piece => piece.kind)).toEqual(['work'])
  expect(runs[1]!.pieces.map(piece => piece.kind)).toEqual(['work', 'hold', 'work', 'hold'])
})

test('a step is as wide as its time, a night of cure is folded, and the widths of a run are its pieces', () => {
  const [wet, clean] = chainShape(twoLayers, 'medium', laidOf(twoLayers))
  const [first, recoat, second, last] = clean!.pieces
  expect([wet!.pieces[0], first, second].map(piece => piece!.weight)).toEqual([60, 60, 60])
  expect(last).toMatchObject({ kind: 'hold', folded: true, weight: 0.45 * 180 })
  expect(last!.minutes).toBeGreaterThan(last!.weight)
  expect(recoat).toMatchObject({ kind: 'hold', folded: false, age: 0 })
  expect(recoat!.weight).toBe(recoat!.minutes)
  expect(clean!.weight).toBe(clean!.pieces.reduce((sum, piece) => sum + piece.weight, 0))
})

test('the hold between two layers says how long it may last', () => {
  const laid = laidOf(twoLayers)
  const hold = chainShape(twoLayers, 'medium', laid)[1]!.pieces[1]!
  const next = laid[laid.findIndex(each => each.kind === 'hold') + 1]!
  expect(hold).toMatchObject({ most: hold.minutes + next.waitMax! })
})

test('a levelling is drawn as a step, and its layer without it', () => {
  const steps = [coat('Layer'), step('Level', { stage: 'level', needs: 'clean', minutes: allSizes(30) })]
  const laid = laidOf(steps)
  expect(laid[0]!.minutes).toBe(90)
  const works = chainShape(steps, 'medium', laid).flatMap(run => run.pieces)
  expect(works.slice(0, 2)).toMatchObject([
    { kind: 'work', index: 0, minutes: 60 },
    { kind: 'work', index: 1, minutes: 30 },
  ])
})

test('two steps of one name keep their order, and one the size leaves out has no time', () => {
  const steps = [
    step('Rinse', { minutes: allSizes(15) }),
    step('Foam', { minutes: { small: 0, medium: 0, large: 30, xl: 30 } }),
    step('Rinse', { minutes: allSizes(45) }),
  ]
  const pieces = chainShape(steps, 'medium', laidOf(steps)).flatMap(run => run.pieces)
  expect(pieces).toMatchObject([
    { index: 0, minutes: 15 },
    { index: 1, minutes: 0 },
    { index: 2, minutes: 45 },
  ])
})

test('a wait is drawn before the step that waits, also where the chain cannot be laid', () => {
  const steps = [step('Wash'), step('Dry', { waitMin: 120 })]
  for (const laid of [laidOf(steps), null])
    expect(chainShape(steps, 'medium', laid)[0]!.pieces).toMatchObject([
      { kind: 'work', index: 0 },
      { kind: 'wait', minutes: 120, weight: 54 },
      { kind: 'work', index: 1 },
    ])
})

test('a hold begins at the degree its coat has reached by then', () => {
  const points = (path: string) => [...path.matchAll(/L([\d.]+) ([\d.]+)/g)].map(match => Number(match[2]))
  const later = points(holdPath(profile, 240, 600))
  expect(later[0]).toBeCloseTo(100 - 92 * cureCurve(profile).degreeAt(240).likely, 1)
  expect(later.at(-2)).toBeCloseTo(100 - 92 * cureCurve(profile).degreeAt(840).likely, 1)
  expect(points(holdPath(profile, 0, 600))[0]).toBe(100)
})

function allSizes(minutes: number) {
  return { small: minutes, medium: minutes, large: minutes, xl: minutes }
}
