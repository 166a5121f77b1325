import { afterAll, beforeAll, expect, it } from 'vitest'
import { fillDemo } from '../../main/services/demo/index.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let real: { customer: string; vehicle: string; product: string; plan: string; bay: string; treatment: string }
beforeAll(async () => {
  api = await makeApi('2026-04-15T12:00:00Z')
  await fillDemo(api.desk)
  const { read } = api.desk.store
  const first = { select: { id: true } } as const
  const of = async (row: Promise<{ id: string }>) => (await row).id
  real = {
    customer: await of(read.customer.findFirstOrThrow(first)),
    vehicle: await of(read.vehicle.findFirstOrThrow(first)),
    product: await of(read.product.findFirstOrThrow(first)),
    plan: await of(read.upkeepPlan.findFirstOrThrow(first)),
    bay: await of(read.bay.findFirstOrThrow(first)),
    treatment: await of(read.treatment.findFirstOrThrow(first)),
  }
}, 120_000)
afterAll(() => api.close())

const line = { sizeId: 'none', containers: 1, expiresOn: null, batch: null, costMinor: 100 }
const recipe = { stage: 'coat', stepName: 'Coat', sizeClass: 'medium', amount: 10, spread: 1 }
const write = { channel: 'email' }

/** What once was answered with "something went wrong", and words that say what is wrong instead. */
const asked: [string, 'query' | 'mutate', () => object, RegExp][] = [
  ['shelf.learnCode', 'mutate', () => ({ code: '4012345', productId: 'none' }), /^This product is not there/],
  [
    'shelf.receive',
    'mutate',
    () => ({ supplierId: 'none', lines: [{ ...line, productId: real.product }] }),
    /is not here|no such|supplier|size/i,
  ],
  ['shelf.useAsRecipe', 'mutate', () => ({ ...recipe, productId: 'none' }), /is not here|no |product|step/i],
  [
    'upkeep.exposure.save',
    'mutate',
    () => ({ vehicleId: 'none', choices: {}, version: 0 }),
    /is not here|car/i,
  ],
  [
    'booking.hold',
    'mutate',
    () => ({
      vehicleId: real.vehicle,
      condition: 'good',
      treatmentIds: [real.treatment],
      askedDate: 'x',
      plan: {
        steps: [{ bayId: real.bay, startAt: 29_604_480, endAt: 29_604_500, crewIds: [], moved: null }],
        handoverAt: 29_604_600,
      },
    }),
    /askedDate: "x" is no date: give it as 2026-04-15\./,
  ],
  [
    'upkeep.visit',
    'query',
    () => ({ planId: real.plan, ruleOn: '2026-02-30' }),
    /2026-02-30 is not in the calendar/,
  ],
  [
    'reminders.write',
    'mutate',
    () => ({ ...write, planId: real.plan, ruleOn: '2026-02-30' }),
    /2026-02-30 is not in the calendar/,
  ],
  [
    'templates.preview',
    'query',
    () => ({ vehicleId: real.vehicle, language: 'x' }),
    /language: Give a language/,
  ],
  [
    'templates.preview',
    'query',
    () => ({ vehicleId: real.vehicle, language: 'toString' }),
    /language: Give a language/,
  ],
  [
    'upkeep.due',
    'query',
    () => ({ fromDate: '2026-04-15', toDate: '9999-12-31' }),
    /toDate: 9999-12-31 is out of range/,
  ],
  [
    'board.range',
    'query',
    () => ({ fromDate: '9999-12-31', days: 3 }),
    /fromDate: 9999-12-31 is out of range/,
  ],
  ['morning.sheet', 'query', () => ({ date: '9999-12-31' }), /date: 9999-12-31 is out of range/],
  ['shelf.closeOfDay', 'query', () => ({ date: '2026-02-30' }), /date: 2026-02-30 is not in the calendar/],
  [
    'shelf.confirmDraws',
    'mutate',
    () => ({
      jobId: 'none',
      position: 0,
      version: 1,
      draws: [{ productId: real.product, lotId: null, amount: 1e8, how: 'corrected' }],
    }),
    /amount: Give a number from -1,000,000 to 1,000,000/,
  ],
  [
    'bays.saveClosure',
    'mutate',
    () => ({ bayId: 'none', fromAt: 1, toAt: 2e9, reason: '' }),
    /toAt: That is after 2100/,
  ],
]

it.each(asked)('%s is refused in words', async (path, kind, input, words) => {
  const answer = await api[kind](path, input())
  expect(answer.message).toMatch(words)
  expect(answer.status).toBeGreaterThanOrEqual(400)
  expect(answer.status).toBeLessThan(500)
  expect(answer.fault?.reason).toBeTruthy()
})

it('takes no more calls at once than a screen asks for', async () => {
  const calls = (count: number) =>
    api.get(`/trpc/${Array.from({ length: count }, () => 'system.now').join(',')}?batch=1&input=%7B%7D`)
  expect((await calls(40)).status).toBe(200)
  const refused = await calls(41)
  expect(refused.status).toBe(413)
  expect(await refused.text()).toContain('ask for less at once')
})
