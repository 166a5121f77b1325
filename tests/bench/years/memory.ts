/** A process of its own: opens a generated shop, asks everything twice, and prints what that took. */
import { setTimeout as wait } from 'node:timers/promises'
import { createApp } from '../../../main/api/app.ts'
import { dateOf, minuteOf } from '../../../main/domain/calendar/index.ts'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { holdHeap } from '../../../main/hosts/openShop.ts'
import { openStore } from '../../../main/store/store.ts'

/** As fillYears has it, which would load with it what no desk loads. */
const yearsNowAt = minuteOf(Temporal.Instant.from('2026-04-15T15:00:00Z'))

export interface Memory {
  /** Processor time from nothing to the week on the board, in ms. */
  boardMs: number
  /** Memory, in MB. */
  rest: number
  after: number
  peak: number
}

if (import.meta.main) {
  const [file = '', rendererDir = ''] = process.argv.slice(2)
  holdHeap()
  const store = await openStore(file, { dir: migrationsDir })
  const desk = { store, now: () => yearsNowAt, who: 'bench' }
  const app = createApp({ desk, rendererDir })
  const ask = async (path: string, input: unknown) => {
    const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
    await (await app.request(`/trpc/${path}${tail}`)).arrayBuffer()
  }
  await ask('shop.get', undefined)
  await ask('board.range', { fromDate: dateOf(yearsNowAt, 'America/New_York'), days: 7 })
  const { user, system } = process.cpuUsage()
  const boardMs = (user + system) / 1e3
  if (process.argv[4] === 'start') {
    console.log(JSON.stringify({ boardMs }))
    process.exit(0)
  }
  await wait(2_000)
  const rest = process.memoryUsage.rss() / 1e6
  const { queryInputs, queryPaths } = await import('../../api/queryInputs.ts')
  const inputs = await queryInputs(desk)
  for (let round = 0; round < 2; round++) for (const path of queryPaths()) await ask(path, inputs[path])
  const after = process.memoryUsage.rss() / 1e6
  await (await app.request('/documents/calendar.ics')).arrayBuffer()
  const memory: Memory = { boardMs, rest, after, peak: process.resourceUsage().maxRSS / 1e3 }
  console.log(JSON.stringify(memory))
  await store.close()
}
