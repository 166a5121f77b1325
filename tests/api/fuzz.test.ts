import { expect, it } from 'vitest'
import { fillDemo } from '../../main/services/demo/index.ts'
import { seeded } from './bent.ts'
import { type Fuzzed, fuzz } from './fuzzing.ts'
import { type Api, firstRun, makeApi } from './makeApi.ts'

/** LUSTRUM_FUZZ=1000000 asks a million times. */
const long = process.env.LUSTRUM_FUZZ !== undefined
const calls = Number(process.env.LUSTRUM_FUZZ ?? 2_800)
const seed = Number(process.env.FC_SEED ?? 20_260_415)
/** Shops in turn: in full swing, just set up, not set up, and in full swing in the night the clocks change. */
const shops: (() => Promise<Api>)[] = [
  async () => filled(await makeApi('2026-04-15T12:00:00Z')),
  async () => {
    const api = await makeApi('2026-04-15T12:00:00Z')
    await api.mutate('shop.setUp', firstRun)
    return api
  },
  () => makeApi('2026-04-15T12:00:00Z'),
  async () => filled(await makeApi('2026-03-29T00:30:00Z')),
]

/** Acts put rows away and close bays; a fresh shop now and then keeps the services at work. */
const callsPerShop = Math.min(calls / shops.length, 6_000)

async function filled(api: Api): Promise<Api> {
  await fillDemo(api.desk)
  return api
}

it(
  'answers whatever it is asked with a value or a worded refusal, in less than two seconds',
  async () => {
    const all: Fuzzed = { calls: 0, answered: 0, slowest: { path: '', ms: 0 }, faults: [] }
    for (let i = 0; all.calls < calls; i++) {
      const api = await shops[i % shops.length]!()
      const done = await fuzz(api, { calls: callsPerShop, random: seeded(seed + i) }).finally(api.close)
      all.calls += done.calls
      all.answered += done.answered
      if (done.slowest.ms > all.slowest.ms) all.slowest = done.slowest
      all.faults.push(...done.faults)
      // A run of hours that is cut off has told what it found.
      if (long) console.log(`${all.calls} inputs, seeds ${seed} to ${seed + i}, faults`, done.faults)
    }
    console.log(
      `${all.calls} inputs, seed ${seed}: ${all.answered} answered, the others refused in words, ${all.faults.length} faults; the slowest was ${all.slowest.path}, ${all.slowest.ms} ms`,
    )
    expect(all.faults).toEqual([])
    // Otherwise the inputs were bent so far that nothing got past the schemas.
    expect(all.answered).toBeGreaterThan(all.calls / 5)
  },
  300_000 + calls * 100,
)
