/** What the screens ask of the app costs in processor time after one year, three and ten. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { createApp } from '../../main/api/app.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { followCosts } from '../../main/services/shelf/costs.ts'
import { followDue } from '../../main/services/upkeep/planDue.ts'
import { upkeepDay } from '../../main/services/upkeep/visits.ts'
import { openStore } from '../../main/store/store.ts'
import { queryInputs, queryPaths } from '../api/queryInputs.ts'
import type { Figure } from './run.ts'
import { type Call, type EightWindows, eightWindows } from './years/eightWindows.ts'
import { fillYears, largeShop, yearsNowAt } from './years/fillYears.ts'
import type { Memory } from './years/memory.ts'
import { idsOf, screenQuestions } from './years/screenQuestions.ts'

const rounds = 7
/** Rounds before them: a desk that works all day runs compiled code. */
const warmUps = 5
const kept = '.build/bench'

const fileOf = (years: number) => join(kept, `years-${years}.db`)

/** No query may take longer, in ms. */
const mostMs = 300

/** The shops measured: of one, three and ten years, or those of LUSTRUM_BENCH_YEARS ("1,3"). */
const sizes = (process.env.LUSTRUM_BENCH_YEARS ?? '1,3,10').split(',').map(Number)

type Ask = (path: string, input?: unknown, begin?: string) => Promise<{ status: number; bytes: number }>

async function openShop(years: number) {
  const files = { dir: migrationsDir }
  const file = fileOf(years)
  mkdirSync(kept, { recursive: true })
  if (!existsSync(file)) await fillYears(file, files, { ...largeShop, years })
  const store = await openStore(file, files)
  const desk = { store, now: () => yearsNowAt, who: 'bench' }
  // As the host does beside the desk in a shop's first minutes.
  await followDue(desk, await upkeepDay(store.read, yearsNowAt), Number.POSITIVE_INFINITY)
  await followCosts(desk)
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-bench-page-'))
  const app = createApp({
    desk,
    rendererDir,
    onFault: error => console.error(error),
  })
  const ask: Ask = async (path, input, begin) => {
    if (begin) {
      await app.request(`/trpc/${begin}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
      })
      for (let working = true; working; ) {
        await wait(20)
        const { result } = (await (await app.request(`/trpc/${path}`)).json()) as {
          result: { data: { working: unknown } }
        }
        working = result.data.working !== null
      }
    }
    const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
    const answer = await app.request(path.startsWith('/') ? path : `/trpc/${path}${tail}`)
    return { status: answer.status, bytes: (await answer.arrayBuffer()).byteLength }
  }
  const inputs = await queryInputs(desk)
  return {
    ids: await idsOf(store.read),
    // As many due visits as the screen asks for at first.
    inputs: { ...inputs, 'upkeep.due': { ...(inputs['upkeep.due'] as object), limit: 200 } },
    store,
    /** What came to nothing, and what the desk wrote down: rows that every screen has to look past. */
    rows: {
      'holds that lapsed or were released': await store.read.job.count({
        where: { status: { in: ['lapsed', 'cancelled'] } },
      }),
      'audit lines': await store.read.auditLine.count(),
    },
    call: (async (path, input, post) => {
      const tail = post || input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
      const init = {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(input),
      }
      const answer = await app.request(`/trpc/${path}${tail}`, post ? init : {})
      await answer.arrayBuffer()
      return answer.status
    }) satisfies Call,
    save: () => store.transact({ who: 'bench', at: yearsNowAt }, async () => {}),
    async close() {
      await store.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
    ask,
  }
}

/** The middle of some rounds after the first ones, in ms of processor time; null where it was answered with an error. */
async function cpuMs(
  ask: () => ReturnType<Ask>,
  before: () => Promise<void>,
): Promise<{ ms: number; bytes: number } | null> {
  let bytes = 0
  const times: number[] = []
  for (let round = 0; round < warmUps + rounds; round++) {
    await before()
    const start = process.cpuUsage()
    const answer = await ask()
    const { user, system } = process.cpuUsage(start)
    if (answer.status !== 200) return null
    bytes = answer.bytes
    if (round >= warmUps) times.push((user + system) / 1000)
  }
  return { ms: times.sort((a, b) => a - b)[rounds >> 1] ?? 0, bytes }
}

const figureOf = (
  years: number,
  what: string,
  value: number,
  unit: string,
  goal: string | null = null,
  met: boolean | null = null,
): Figure => ({
  bench: 'years',
  case: `${years} years: ${what}`,
  value: Math.round(value * 10) / 10,
  unit,
  goal,
  met,
})

/** What every query there is takes, those with questions of their own too: each over the goal by its name, and the slowest. */
async function* everyQuery(years: number, ask: Ask, inputs: Record<string, unknown>): AsyncGenerator<Figure> {
  const times: { path: string; ms: number }[] = []
  for (const path of queryPaths()) {
    const took = await cpuMs(
      () => ask(path, inputs[path]),
      async () => {},
    )
    if (!took) yield figureOf(years, `${path}, answered with an error`, 1, 'errors', 'none', false)
    else if (took.ms >= mostMs) yield figureOf(years, path, took.ms, 'ms', `under ${mostMs} ms`, false)
    if (took) times.push({ path, ms: took.ms })
  }
  const slowest = times.sort((a, b) => b.ms - a.ms)[0]!
  const { path, ms } = slowest
  const goal = `under ${mostMs} ms`
  yield figureOf(years, `the slowest of ${times.length} queries, ${path}`, ms, 'ms', goal, ms < mostMs)
}

async function* windowFigures(years: number, windows: EightWindows): AsyncGenerator<Figure> {
  const { corePercent, saveMs, askedPercent } = windows
  const name = 'eight windows and a save a second'
  yield figureOf(years, `${name}, of a core`, corePercent, '%', 'under 40 %', corePercent < 40)
  yield figureOf(years, `${name}, 19 of 20 saves`, saveMs, 'ms', 'under 30 ms', saveMs < 30)
  yield figureOf(years, `${name}, asked again of what they show`, askedPercent, '%')
}

/** As `npm start` runs the app, but for the first time: what it compiled before is at hand. */
const heapFlag = '--max-semi-space-size=8'
const compiled = { ...process.env, NODE_COMPILE_CACHE: '.build/compiled' }

/** Of each shop measured, its start. */
const startsMs = new Map<number, number>()

/** What a process of its own takes for the same shop. */
function* memoryFigures(years: number): Generator<Figure> {
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-bench-page-'))
  const script = fileURLToPath(new URL('./years/memory.ts', import.meta.url))
  const said = (...also: string[]) =>
    JSON.parse(
      execFileSync(process.execPath, [heapFlag, script, fileOf(years), rendererDir, ...also], {
        encoding: 'utf8',
        env: compiled,
      }),
    ) as Memory
  said('start')
  const { rest, after, peak, boardMs } = said()
  // The least of some starts: what else the machine does only adds to it.
  const startMs = Math.min(boardMs, ...Array.from({ length: 4 }, () => said('start').boardMs))
  rmSync(rendererDir, { recursive: true, force: true })
  startsMs.set(years, startMs)
  const against = startMs / (startsMs.get(sizes[0] ?? years) ?? startMs)
  yield figureOf(years, 'start to the board', startMs, 'ms')
  yield figureOf(
    years,
    `start to the board, against ${sizes[0]}`,
    against,
    'ratio',
    'at most 1.2',
    against <= 1.2,
  )
  for (const [what, mb, goal] of [
    ['at rest', rest, 200],
    ['after every query twice', after, 400],
    ['at most', peak, 600],
  ] as const)
    yield figureOf(years, `memory ${what}`, mb, 'MB', `under ${goal} MB`, mb < goal)
}

/** Yields the figures of every shop, and at the end how much each grew from the first shop to the last. */
export async function* run(): AsyncGenerator<Figure> {
  const first = new Map<string, number>()
  for (const years of sizes) {
    const { ask, call, save, store, rows, ids, inputs, close } = await openShop(years)
    try {
      for (const [what, count] of Object.entries(rows)) yield figureOf(years, what, count, 'rows')
      // The first shop would else be measured on colder code than those it is set beside.
      if (first.size === 0)
        for (const { path, input, begin } of screenQuestions(ids))
          for (let round = 0; round < rounds; round++) await ask(path, input, begin)
      for (const { name, path, input, begin, afterSave, goalMs } of screenQuestions(ids)) {
        const took = await cpuMs(() => ask(path, input, begin), afterSave ? save : async () => {})
        const goal = goalMs === null ? null : `under ${goalMs} ms`
        if (!took) {
          yield figureOf(years, `${name}, answered with an error`, 1, 'errors', 'none', false)
          continue
        }
        yield figureOf(years, name, took.ms, 'ms', goal, goalMs === null ? null : took.ms < goalMs)
        yield figureOf(years, `${name}, sent`, took.bytes / 1024, 'kB')
        const before = first.get(name)
        if (before === undefined) first.set(name, took.ms)
        else yield figureOf(years, `${name}, against ${sizes[0]}`, took.ms / before, 'ratio')
      }
      yield* everyQuery(years, ask, inputs)
      yield* windowFigures(years, await eightWindows(store, ids, call))
    } finally {
      await close()
    }
    yield* memoryFigures(years)
  }
}
