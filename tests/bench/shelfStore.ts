/** The close of day over a real database of the size a busy shop has after years: how long its screen takes to open. */
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../main/api/app.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { closeOfDay } from '../../main/services/shelf/closeOfDay.ts'
import { shelfValue } from '../../main/services/shelf/value.ts'
import { lotRows } from '../../main/store/lotRows.ts'
import { migrate } from '../../main/store/migrate.ts'
import { openStore } from '../../main/store/store.ts'
import { pastUse } from '../../main/store/useRows.ts'
import type { Figure } from './run.ts'
import { fillOldShelf, oldShelfNowAt } from './simulation/oldShelf.ts'

const goalMs = 1_000
const rounds = 7

function figure(
  name: string,
  value: number,
  unit: string,
  goal: string | null = null,
  met: boolean | null = null,
): Figure {
  return { bench: 'shelf', case: name, value: Math.round(value * 100) / 100, unit, goal, met }
}

async function median(work: () => Promise<unknown>): Promise<number> {
  await work()
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  return times.sort((a, b) => a - b)[rounds >> 1]!
}

/** A shop of so many products with 25 lots each and 100 moves a lot, three years of them, in a folder of its own. */
async function openOldShop(products: number): Promise<{ desk: Desk; file: string; close(): Promise<void> }> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-bench-'))
  const file = join(dir, 'lustrum.db')
  await migrate(file, { dir: migrationsDir })
  fillOldShelf(file, products)
  const store = await openStore(file, { dir: migrationsDir })
  return {
    desk: { store, now: () => oldShelfNowAt, who: 'bench' },
    file,
    async close() {
      await store.close()
      rmSync(dir, { recursive: true, force: true })
    },
  }
}

export async function* storeFigures(): AsyncGenerator<Figure> {
  let before: number | null = null
  for (const products of [20, 200]) {
    const shop = await openOldShop(products)
    const { desk } = shop
    try {
      const moves = await desk.store.read.stockMove.count()
      const lots = await desk.store.read.lot.count()
      const size = `${products} products, ${lots} lots, ${moves} moves in the database`
      const asked = products === 200
      const start = performance.now()
      await closeOfDay(desk)
      const first = performance.now() - start
      yield figure(`${size}: close of day, the first time ever, with all plans worked out`, first, 'ms')
      const time = await median(() => closeOfDay(desk))
      yield figure(
        `${size}: close of day`,
        time,
        'ms',
        asked ? `under ${goalMs} ms` : null,
        asked ? time < goalMs : null,
      )
      const { ms, bytes } = await overTheHandler(desk)
      yield figure(
        `${size}: close of day, over the handler as JSON`,
        ms,
        'ms',
        asked ? `under ${goalMs} ms` : null,
        asked ? ms < goalMs : null,
      )
      yield figure(`${size}: what the screen is sent`, bytes / 1024, 'kB')
      yield figure(
        `${size}: of that, summing the ledger lot by lot`,
        await median(() => lotRows(desk.store.read)),
        'ms',
      )
      const since = oldShelfNowAt - 365 * 1440
      yield figure(
        `${size}: of that, reading a year of use`,
        await median(() => pastUse(desk.store.read, since)),
        'ms',
      )
      if (asked)
        yield figure(
          `${size}: costing the whole ledger both ways`,
          await median(() => shelfValue(desk)),
          'ms',
        )
      yield figure(`${size}: the database file`, statSync(shop.file).size / 1024 / 1024, 'MB')
      if (before !== null)
        yield figure('ten times the shelf: growth of the close of day', time / before, 'ratio')
      before = time
    } finally {
      await shop.close()
    }
  }
}

async function overTheHandler(desk: Desk): Promise<{ ms: number; bytes: number }> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-bench-page-'))
  const app = createApp({ desk, rendererDir: dir })
  try {
    let bytes = 0
    const ms = await median(async () => {
      const answer = await app.request('/trpc/shelf.closeOfDay')
      bytes = (await answer.arrayBuffer()).byteLength
    })
    return { ms, bytes }
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}
