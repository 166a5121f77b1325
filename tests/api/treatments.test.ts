import { beforeEach, expect, test } from 'vitest'
import { sizes, washStep } from '../domain/shop/washStep.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { bookOne } from './bookOne.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop
let coating: string

beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
  coating = (await api.query('products.list')).data.find(
    (each: { kind: string }) => each.kind === 'coating',
  ).id
})

const list = async (input?: object) => (await api.query('treatments.list', input)).data

const step = (change: object = {}) => ({ ...washStep, ...change })
const coat = (change: object = {}) =>
  step({ name: 'Coat', stage: 'coat', needs: 'clean', skill: 'coat', productId: coating, ...change })

const treatment = (change: object = {}) => ({
  name: 'Wheels',
  summary: '',
  prices: sizes(24_000),
  steps: [step()],
  ...change,
})

test('a treatment is added with its steps, changed, ordered, put away and taken back', async () => {
  const { data } = await api.mutate('treatments.save', treatment({ steps: [step(), coat()] }))
  expect((await list()).at(-1)).toMatchObject({ name: 'Wheels', version: 1, steps: [step(), coat()] })
  const edit = { id: data.id, version: 1, ...treatment({ name: 'Wheels coated', steps: [coat()] }) }
  await api.mutate('treatments.save', edit)
  expect((await list()).at(-1)).toMatchObject({ name: 'Wheels coated', steps: [coat()], version: 2 })
  const ids = (await list()).map((each: { id: string }) => each.id)
  await api.mutate('treatments.order', { ids: ids.toReversed() })
  expect((await list())[0].name).toBe('Wheels coated')
  await api.mutate('treatments.archive', { id: data.id, version: 2 })
  expect(await list()).toHaveLength(4)
  await api.mutate('treatments.restore', { id: data.id, version: 3 })
  expect((await list()).at(-1).name).toBe('Wheels coated')
})

test.each([
  ['no name', { name: '' }, 'name'],
  ['a negative price', { prices: { ...sizes(1), xl: -100 } }, 'prices.xl'],
  ['half a cent', { prices: { ...sizes(1), small: 99.5 } }, 'prices.small'],
  ['no price for a size', { prices: { small: 1, medium: 1, large: 1 } }, 'prices.xl'],
  ['no steps', { steps: [] }, 'steps'],
  ['a nameless step', { steps: [step({ name: ' ' })] }, 'steps.0.name'],
  [
    'a negative duration',
    { steps: [step({ minutes: { ...sizes(60), large: -5 } })] },
    'steps.0.minutes.large',
  ],
  ['a step of no time', { steps: [step({ minutes: sizes(0) })] }, 'steps.0.minutes.medium'],
  [
    'a duration that is none',
    { steps: [step({ minutes: { ...sizes(60), xl: null } })] },
    'steps.0.minutes.xl',
  ],
  ['nobody sent', { steps: [step({ crew: 0 })] }, 'steps.0.crew'],
  ['a crowd sent', { steps: [step({ crew: 7 })] }, 'steps.0.crew'],
  ['a negative wait', { steps: [step(), step({ name: 'Dry', waitMin: -1 })] }, 'steps.1.waitMin'],
  [
    'waits that contradict each other',
    { steps: [step(), step({ name: 'Dry', waitMin: 120, waitMax: 60 })] },
    'steps.1.waitMax',
  ],
  [
    'a step longer than the shop is ever open, and not to be paused',
    { steps: [step({ minutes: { ...sizes(60), xl: 601 } })] },
    'steps.0.minutes.xl',
  ],
  ['stages out of order', { steps: [step({ stage: 'finish' }), step()] }, 'steps.1.stage'],
  ['a coat of nothing', { steps: [step({ stage: 'coat', needs: 'clean' })] }, 'steps.0.productId'],
  ['a product that is not there', { steps: [step({ productId: 'nothing' })] }, 'steps.0.productId'],
])('a treatment with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('treatments.save', treatment(change))
  expect(answer).toMatchObject({ status: 400, fault: { field } })
  expect(await list({ archived: true })).toHaveLength(4)
  expect(await api.desk.store.read.treatmentStep.count({ where: { name: 'Dry' } })).toBe(0)
})

// The test shop's coating: tack-free after 60 minutes, next layer 60 to 240 minutes after the coat.
test.each([
  ['a layer sooner than the window opens', { waitMax: 30 }, 'steps.1.waitMax'],
  ['a layer later than the window closes', { waitMin: 300 }, 'steps.1.waitMin'],
])('a treatment that asks for %s contradicts the cure and is refused', async (_, waits, field) => {
  const steps = [coat(), coat({ name: 'Second layer', ...waits })]
  const answer = await api.mutate('treatments.save', treatment({ steps }))
  expect(answer).toMatchObject({ status: 400, fault: { reason: 'waits-contradict', field } })
})

test('a product that cures belongs into a coat or topper step', async () => {
  const answer = await api.mutate('treatments.save', treatment({ steps: [step({ productId: coating })] }))
  expect(answer).toMatchObject({ status: 400, fault: { field: 'steps.0.productId' } })
})

test('a long step that may pause at closing is kept', async () => {
  const steps = [step({ splittable: true, minutes: sizes(900) })]
  expect((await api.mutate('treatments.save', treatment({ steps }))).status).toBe(200)
})

test('a refused change leaves the old steps as they were', async () => {
  const [first] = await list()
  const answer = await api.mutate('treatments.save', { ...first, steps: [step({ crew: 9 })] })
  expect(answer.status).toBe(400)
  expect((await list())[0]).toEqual(first)
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const [first] = await list()
  await api.mutate('treatments.save', { ...first, name: 'First' })
  const second = await api.mutate('treatments.save', { ...first, name: 'Second', steps: [step()] })
  expect(second).toMatchObject({ status: 409, fault: { reason: 'stale' } })
  expect((await list())[0]).toMatchObject({ name: 'First', steps: first.steps })
})

test('a booked car keeps the steps and the price it was sold with', async () => {
  const job = await bookOne(api, shop, 'wash')
  const sold = (await list()).find((each: { id: string }) => each.id === shop.treatments.wash)
  await api.mutate('treatments.save', {
    ...sold,
    prices: sizes(99_900),
    steps: [step({ minutes: sizes(300) })],
  })
  await api.mutate('treatments.archive', { id: sold.id, version: 2 })
  const after = (await api.query('jobs.get', { id: job.id })).data
  expect(after.treatments).toEqual(job.treatments)
  expect(after.steps.map((each: { minutes: number }) => each.minutes)).toEqual([60])
})
