import { afterAll, beforeAll, expect, it } from 'vitest'
import { appRouter } from '../../main/api/router.ts'
import { fillDemo } from '../../main/services/demo/index.ts'
import { bent, seeded } from './bent.ts'
import { inputOf, typeOf } from './inputOf.ts'
import { type Api, makeApi } from './makeApi.ts'

/** Calls a procedure; all of them together stay under half a minute. */
const rounds = 14
/** What sends letters over the network, or fills the shop anew. */
const notAsked = new Set([
  'mail.test',
  'reminders.send',
  'reminders.sendTest',
  'shop.openDemo',
  'system.changes',
])
/** Learns the whole shelf, or looks for room for every owner who is due: seconds each time. */
const costly = new Set(['orders.propose', 'reminders.prepare'])

let api: Api
let ids: string[]
beforeAll(async () => {
  api = await makeApi('2026-04-15T12:00:00Z')
  await fillDemo(api.desk)
  const { read } = api.desk.store
  const some = { take: 6, select: { id: true } } as const
  ids = (
    await Promise.all([
      read.job.findMany(some),
      read.bay.findMany(some),
      read.crewMember.findMany(some),
      read.vehicle.findMany(some),
      read.customer.findMany(some),
      read.treatment.findMany(some),
      read.product.findMany(some),
      read.lot.findMany(some),
      read.supplier.findMany(some),
      read.upkeepPlan.findMany(some),
    ])
  )
    .flat()
    .map(row => row.id)
}, 300_000)
afterAll(() => api.close())

it('answers whatever it is asked with a value or a worded refusal', async () => {
  const random = seeded(Number(process.env.FC_SEED ?? 20_260_415))
  const faults: string[] = []
  let calls = 0
  let answered = 0
  for (const [path, procedure] of Object.entries(appRouter._def.procedures)) {
    if (notAsked.has(path)) continue
    const schema = inputOf(procedure)
    const ask = typeOf(procedure) === 'query' ? api.query : api.mutate
    for (let round = 0; round < (schema && !costly.has(path) ? rounds : 1); round++) {
      const input = schema ? bent(schema, ids, random) : undefined
      const answer = await ask(path, input)
      calls++
      if (answer.status === 200) answered++
      const worded = answer.status === 200 || (answer.status < 500 && /\w/.test(answer.message))
      const stack = /\n\s+at |prisma|SQLITE|\.ts:\d/i.test(answer.message)
      if (!worded || stack)
        faults.push(`${path} ${JSON.stringify(input)}: ${answer.status} ${answer.message}`)
    }
  }
  // Otherwise the inputs were bent so far that nothing got past the schemas.
  expect(answered).toBeGreaterThan(calls / 20)
  expect(calls).toBeGreaterThan(1_400)
  expect(faults).toEqual([])
}, 300_000)
