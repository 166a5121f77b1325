import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { Refusal } from '../../main/domain/refusal.ts'
import { makeDesk } from '../services/makeDesk.ts'
import type { Act, Ids } from './act.ts'
import { jobActs } from './jobActs.ts'
import { beginning, killed, RealShop } from './realShop.ts'
import { recordActs } from './recordActs.ts'
import { shelfActs } from './shelfActs.ts'
import type { Model, ShopState } from './shopModel.ts'

/** LUSTRUM_MODEL=300 plays so many games of up to 70 acts. */
const games = Number(process.env.LUSTRUM_MODEL ?? 8)

type Command = fc.AsyncCommand<Model, RealShop>

async function outcomeOf(work: Promise<unknown>): Promise<string> {
  try {
    await work
    return 'done'
  } catch (error) {
    if (error === killed) return 'killed'
    // Its own code for what is finished already is the word for what went well.
    if (error instanceof Refusal) return error.code === 'done' ? 'done already' : error.code
    const { code } = error as { code?: unknown }
    if (code === 'no-place') return code as string
    throw error
  }
}

async function expectSame(model: Model, real: RealShop): Promise<void> {
  const { nowAt: _, ...state } = model
  expect(await real.state()).toEqual(state)
}

const planned = (act: Act, model: Model) => act.plan(model, model) !== null

/** One desk does it; where `killAt` is above nothing, its process is killed before that write. */
const one = (act: Act, killAt: number): Command => ({
  toString: () => (killAt > 0 ? `${act.words}, killed at write ${killAt}` : act.words),
  check: model => planned(act, model),
  async run(model, real) {
    const { may, done } = act.plan(model, model)!
    const seen = structuredClone(model)
    const work = (desk: Parameters<Act['really']>[0]) => act.really(desk, real.ids, seen)
    const outcome = await outcomeOf(killAt > 0 ? real.killedAt(killAt, work) : work(real.desk('front desk')))
    if (outcome !== 'killed') expect(may).toContain(outcome)
    if (outcome === 'done') done()
    await expectSame(model, real)
  },
})

/** Two desks do something at once, having seen the same: it comes out as one after the other, whichever was first. */
const both = (acts: readonly [Act, Act]): Command => ({
  toString: () => acts.map(act => act.words).join(' | '),
  check: model => acts.every(act => planned(act, model)),
  async run(model, real) {
    const seen = structuredClone(model)
    const outcomes = await Promise.all(
      acts.map((act, i) => outcomeOf(act.really(real.desk(`desk ${i}`), real.ids, seen))),
    )
    const { nowAt: _, ...state } = { nowAt: 0, ...(await real.state()) }
    const orders = [[0, 1] as const, [1, 0] as const].map(order => {
      const after = structuredClone(model)
      const fits = order.every(i => {
        const { may, done } = acts[i]!.plan(after, seen)!
        if (outcomes[i] === 'done') done()
        return may.includes(outcomes[i]!)
      })
      return { fits, after }
    })
    const same = ({ nowAt: _, ...after }: Model) => JSON.stringify(after) === JSON.stringify(state)
    const order = orders.find(({ fits, after }) => fits && same(after))
    if (!order) expect({ outcomes, state }).toEqual(orders)
    else Object.assign(model, order.after)
  },
})

const wait = (minutes: number): Command => ({
  toString: () => `${minutes} min pass`,
  check: () => true,
  async run(model, real) {
    model.nowAt += minutes
    real.wait(minutes)
  },
})

const restart = (): Command => ({
  toString: () => 'the app is killed and started again',
  check: () => true,
  async run(model, real) {
    await real.killedNow()
    await expectSame(model, real)
  },
})

const act = fc.oneof(...recordActs, ...jobActs, ...shelfActs)
const killAt = fc.oneof(
  { weight: 5, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 6 }) },
)
const command = fc.oneof(
  { weight: 8, arbitrary: fc.tuple(act, killAt).map(each => one(...each)) },
  { weight: 2, arbitrary: fc.tuple(act, act).map(both) },
  { weight: 2, arbitrary: fc.integer({ min: 5, max: 300 }).map(wait) },
  { weight: 1, arbitrary: fc.constant(restart()) },
)
/** Something to play with. */
const opening = fc.tuple(
  ...[recordActs[0]!, recordActs[4]!, recordActs[4]!, shelfActs[0]!, jobActs[0]!, jobActs[0]!],
)
const game = fc
  .tuple(opening, fc.array(command, { minLength: 50, maxLength: 70 }))
  .map(([acts, commands]) => [...acts.map(act => one(act, 0)), ...commands])

let dir: string
let template: string
let shop: Ids['shop']
let beganAt: number
beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'lustrum-model-'))
  template = join(dir, 'begun.db')
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await beginning(desk)
  beganAt = desk.now()
  const raw = new Database(desk.store.source.file)
  raw.prepare('vacuum into ?').run(template)
  raw.close()
  await desk.close()
})
afterAll(() => rmSync(dir, { recursive: true, force: true }))

it(
  'a plain model and the app, killed, misread and worked by two, come to the same shop',
  async () => {
    let played = 0
    await fc.assert(
      fc.asyncProperty(game, async each => {
        const empty: ShopState = { customers: [], cars: [], jobs: [], bottles: [], lines: 0 }
        const real = await RealShop.begin(template, shop, beganAt)
        try {
          await fc.asyncModelRun(() => ({ model: { ...structuredClone(empty), nowAt: beganAt }, real }), each)
          played++
        } finally {
          await real.close()
        }
      }),
      { numRuns: games, endOnFailure: true },
    )
    expect(played).toBe(games)
  },
  60_000 + games * 20_000,
)
