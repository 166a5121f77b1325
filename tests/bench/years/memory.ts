/** A process of its own: opens a generated shop, asks everything twice, and prints what memory that took, in MB. */
import { setTimeout as wait } from 'node:timers/promises'
import { createApp } from '../../../main/api/app.ts'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { holdHeap } from '../../../main/hosts/openShop.ts'
import { openStore } from '../../../main/store/store.ts'
import { queryInputs, queryPaths } from '../../api/queryInputs.ts'
import { yearsNowAt } from './fillYears.ts'

export interface Memory {
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
  const inputs = await queryInputs(desk)
  const ask = async (path: string) => {
    const tail =
      inputs[path] === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(inputs[path]))}`
    await (await app.request(`/trpc/${path}${tail}`)).arrayBuffer()
  }
  for (const path of ['shop.get', 'board.range']) await ask(path)
  await wait(2_000)
  const rest = process.memoryUsage.rss() / 1e6
  for (let round = 0; round < 2; round++) for (const path of queryPaths()) await ask(path)
  const after = process.memoryUsage.rss() / 1e6
  await (await app.request('/documents/calendar.ics')).arrayBuffer()
  const memory: Memory = { rest, after, peak: process.resourceUsage().maxRSS / 1e3 }
  console.log(JSON.stringify(memory))
  await store.close()
}
