/** What the screens ask of the app costs in processor time after one year, three and, where asked for, ten. */
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { createApp } from '../../main/api/app.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { openStore } from '../../main/store/store.ts'
import type { Figure } from './run.ts'
import { fillYears, largeShop, yearsNowAt } from './years/fillYears.ts'
import { idsOf, screenQuestions } from './years/screenQuestions.ts'

const rounds = 3
const kept = '.build/bench'

/** The shops measured: one and three years, or those of LUSTRUM_BENCH_YEARS ("1,3,10"). */
const sizes = (process.env.LUSTRUM_BENCH_YEARS ?? '1,3').split(',').map(Number)

type Ask = (path: string, input?: unknown, begin?: string) => Promise<{ status: number; bytes: number }>

async function openShop(years: number) {
  const files = { dir: migrationsDir }
  const file = join(kept, `years-${years}.db`)
  mkdirSync(kept, { recursive: true })
  if (!existsSync(file)) await fillYears(file, files, { ...largeShop, years })
  const store = await openStore(file, files)
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-bench-page-'))
  const app = createApp({
    desk: { store, now: () => yearsNowAt, who: 'bench' },
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
  return {
    ids: await idsOf(store.read),
    save: () => store.transact({ who: 'bench', at: yearsNowAt }, async () => {}),
    async close() {
      await store.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
    ask,
  }
}

/** The middle of some rounds after a first one, in ms of processor time; null where it was answered with an error. */
async function cpuMs(
  ask: () => ReturnType<Ask>,
  before: () => Promise<void>,
): Promise<{ ms: number; bytes: number } | null> {
  let bytes = 0
  const times: number[] = []
  for (let round = 0; round <= rounds; round++) {
    await before()
    const start = process.cpuUsage()
    const answer = await ask()
    const { user, system } = process.cpuUsage(start)
    if (answer.status !== 200) return null
    bytes = answer.bytes
    if (round > 0) times.push((user + system) / 1000)
  }
  return { ms: times.sort((a, b) => a - b)[rounds >> 1] ?? 0, bytes }
}

/** Yields the figures of every shop, and at the end how much each grew from the first shop to the last. */
export async function* run(): AsyncGenerator<Figure> {
  const first = new Map<string, number>()
  for (const years of sizes) {
    const { ask, save, ids, close } = await openShop(years)
    try {
      for (const { name, path, input, begin, afterSave, goalMs } of screenQuestions(ids)) {
        const took = await cpuMs(() => ask(path, input, begin), afterSave ? save : async () => {})
        const figure = (
          what: string,
          value: number,
          unit: string,
          goal: string | null,
          met: boolean | null,
        ) => ({
          bench: 'years',
          case: `${years} years: ${name}${what}`,
          value: Math.round(value * 10) / 10,
          unit,
          goal,
          met,
        })
        const goal = goalMs === null ? null : `under ${goalMs} ms`
        if (!took) {
          yield figure(', answered with an error', 1, 'errors', 'none', false)
          continue
        }
        yield figure('', took.ms, 'ms', goal, goalMs === null ? null : took.ms < goalMs)
        yield figure(', sent', took.bytes / 1024, 'kB', null, null)
        const before = first.get(name)
        if (before === undefined) first.set(name, took.ms)
        else yield figure(`, against ${sizes[0]}`, took.ms / before, 'ratio', null, null)
      }
    } finally {
      await close()
    }
  }
}
