import { expect, it } from 'vitest'
import { bySize, expectedDraws, keptRecipes, workKey } from '../../../main/services/shelf/stepDraws.ts'
import { washStep } from '../../domain/shop/washStep.ts'

const line = (productId: string, centi: number, sdCenti = 0) => ({
  productId,
  bySize: bySize(size => (size === 'xl' ? { centi: centi * 2, sdCenti } : { centi, sdCenti })),
})
const step = (name: string, draws: unknown[], stage = 'coat') => ({
  ...washStep,
  name,
  stage,
  needs: 'clean',
  skill: 'coat',
  draws,
})
const inJob = (position: number, name: string, kind = 'work') => ({ position, kind, stage: 'coat', name })

it('finds a job’s steps again by stage and name, whatever the capitals', () => {
  expect(workKey({ stage: 'coat', name: ' First Layer ' })).toBe(
    workKey({ stage: 'coat', name: 'first layer' }),
  )
  expect(workKey({ stage: 'topper', name: 'Layer' })).not.toBe(workKey({ stage: 'coat', name: 'Layer' }))
})

it('draws by the size of the vehicle, at work only, and names the steps it found', () => {
  const treatments = [
    { name: 'Two', steps: [step('First', [line('one', 500)]), step('Second', [line('two', 0)])] },
  ]
  const steps = [inJob(0, 'First'), inJob(1, 'First', 'hold'), inJob(2, 'Second'), inJob(3, 'Gone')]
  expect(expectedDraws(treatments, steps, 'xl')).toEqual({
    draws: [{ position: 0, productId: 'one', expectedCenti: 1_000, sdCenti: 0 }],
    found: [0, 2],
  })
})

it('sums a product named twice at a step, its spreads as independent ones', () => {
  const twice = [{ name: 'One', steps: [step('First', [line('one', 500, 30), line('one', 200, 40)])] }]
  expect(expectedDraws(twice, [inJob(0, 'First')], 'small').draws).toEqual([
    { position: 0, productId: 'one', expectedCenti: 700, sdCenti: 50 },
  ])
})

it('draws for a levelling with the layer it is part of', () => {
  const one = [
    {
      name: 'One',
      steps: [step('First', [line('one', 500)]), step('Level', [line('cloths', 300)], 'level')],
    },
  ]
  expect(expectedDraws(one, [inJob(0, 'First')], 'small')).toEqual({
    draws: [
      { position: 0, productId: 'one', expectedCenti: 500, sdCenti: 0 },
      { position: 0, productId: 'cloths', expectedCenti: 300, sdCenti: 0 },
    ],
    found: [0],
  })
})

it('keeps a recipe with its work, and with its place where the step was renamed', () => {
  const before = [step('First', [line('one', 1)]), step('Second', [line('two', 2)])]
  const kept = keptRecipes(before, [
    { stage: 'coat', name: 'Wipe' },
    { stage: 'coat', name: 'Last' },
    { stage: 'coat', name: 'First' },
  ])
  expect(kept.map(lines => lines.map(each => each.productId))).toEqual([[], ['two'], ['one']])
})

it('draws its part where a treatment is laid over a part of the paint, and for a wash all of it', () => {
  const steps = [step('Wash', [line('soap', 100)], 'prepare'), step('First', [line('one', 500, 30)])]
  const jobSteps = [{ ...inJob(0, 'Wash'), stage: 'prepare' }, inJob(1, 'First')]
  expect(expectedDraws([{ name: 'One', share: 0.35, steps }], jobSteps, 'medium').draws).toEqual([
    { position: 0, productId: 'soap', expectedCenti: 100, sdCenti: 0 },
    { position: 1, productId: 'one', expectedCenti: 175, sdCenti: 11 },
  ])
})
