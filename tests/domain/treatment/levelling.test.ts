import { expect, test } from 'vitest'
import { checkTreatment } from '../../../main/domain/shop/index.ts'
import { layOut } from '../../../main/domain/treatment/index.ts'
import { coating, input, step, treatment } from './samples.ts'

// High spots are levelled within minutes of each panel, while the coating is wet: common practice, no source.
const layer = (name = 'Layer') => step({ name, stage: 'coat', productId: 'two', minutes: 80, skill: 'coat' })
const level = (change = {}) => step({ name: 'Level', stage: 'level', minutes: 25, ...change })

test('Levelling is part of its layer: no hold comes between, and the cure runs from its end', () => {
  const two = coating({ tackFreeMin: 60, handoverMin: 240 })
  const { steps, notes, handsOnMin } = layOut(input([treatment(layer(), level({ crew: 2 }))], { two }))
  // 80 and 25 minutes are 105, and not 90 and 30 on the grid each.
  expect(steps.map(each => [each.name, each.minutes])).toEqual([
    ['Layer', 105],
    ['Cure before pick-up', 240],
  ])
  expect(steps[0]).toMatchObject({ crew: 2, stage: 'coat', productId: 'two' })
  expect(handsOnMin).toBe(105)
  expect(notes).toEqual([expect.stringContaining('"Layer" includes "Level": each panel is levelled')])
  // As a step of its own at the end it came after tack-free, an hour too late: what was wrong.
  const late = layOut(input([treatment(layer(), level({ stage: 'finish' }))], { two })).steps
  expect(late[1]).toMatchObject({ kind: 'hold', minutes: 60 })
})

test('Each of two layers is levelled before the next, and their windows count both', () => {
  const two = coating({ recoat: { minMin: 60, maxMin: 240 }, missedRecoat: 'Abrade.' })
  const chain = treatment(layer('First layer'), level(), layer('Second layer'), level())
  const { steps } = layOut(input([chain], { two }))
  const apart = layOut(
    input([treatment({ ...layer(), minutes: all(105) }, { ...layer('Second'), minutes: all(105) })], { two }),
  ).steps
  expect(steps.map(each => [each.kind, each.minutes, each.waitMax])).toEqual(
    apart.map(each => [each.kind, each.minutes, each.waitMax]),
  )
})

test('Where the layer is left out for a size, so is its levelling', () => {
  const small = { ...layer(), minutes: { ...all(80), small: 0 } }
  const { steps } = layOut(
    input([treatment(step(), small, level())], { two: coating() }, { sizeClass: 'small' }),
  )
  expect(steps.map(each => each.name)).toEqual(['Step'])
})

test('A levelling follows its coat step with nothing of its own, or is refused', () => {
  const products = [
    { id: 'two', ...coating() },
    { id: 'cloth', name: 'Cloth', kind: 'consumable' as const, cureProfile: null },
  ]
  const fault = (...steps: ReturnType<typeof step>[]) => {
    try {
      checkTreatment({ name: 'Coat', prices: all(0), steps }, products, 600)
      return null
    } catch (error) {
      const { code, field } = error as { code: string; field: string }
      return [code, field]
    }
  }
  expect(fault(layer(), level(), layer(), level())).toBeNull()
  expect(fault(level())).toEqual(['stage-order', 'steps.0.stage'])
  expect(fault(layer(), level(), level())).toEqual(['stage-order', 'steps.2.stage'])
  expect(fault(step({ stage: 'wipe' }), level())).toEqual(['stage-order', 'steps.1.stage'])
  expect(fault(layer(), level({ productId: 'cloth' }))).toEqual(['product-misplaced', 'steps.1.productId'])
})

function all(minutes: number) {
  return { small: minutes, medium: minutes, large: minutes, xl: minutes }
}
