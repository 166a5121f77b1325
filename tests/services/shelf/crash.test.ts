import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import { afterAll, describe, expect, it } from 'vitest'
import { makeDesk } from '../makeDesk.ts'
import { book, shelfShop, stock, workUntil } from './shelfShop.ts'

const killed = fileURLToPath(new URL('./killedFinish.ts', import.meta.url))
const dir = mkdtempSync(join(tmpdir(), 'lustrum-killed-'))
afterAll(() => rmSync(dir, { recursive: true, force: true }))

/** A shop whose first coat is under way, its file put aside, and the act that finishes the coat with its draw. */
async function underWay() {
  const desk = await makeDesk('2026-04-15T11:00:00Z')
  try {
    const shop = await shelfShop(desk)
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    let before = 0
    const stop = new Error('put aside')
    await workUntil(desk, booked, position, async version => {
      before = version
      throw stop
    }).catch(error => {
      if (error !== stop) throw error
    })
    const [{ file }] = (await desk.store.read.$queryRawUnsafe(`select file from pragma_database_list`)) as [
      { file: string },
    ]
    const raw = new Database(file)
    raw.prepare('vacuum into ?').run(join(dir, 'before.db'))
    raw.close()
    const draws = [{ productId: shop.coating, lotId: null, amount: 60, how: 'corrected' }]
    const act = { nowAt: desk.now(), id: booked.jobId, version: before, position, draws }
    return act
  } finally {
    await desk.close()
  }
}

/** What the database holds of the finish and of the draw. */
function found(
  file: string,
  { nowAt, id: jobId, position }: { nowAt: number; id: string; position: number },
) {
  const raw = new Database(file)
  try {
    const get = (sql: string, ...values: unknown[]) =>
      raw
        .prepare(sql)
        .pluck()
        .get(...values)
    return {
      finished: get(
        'select actualEndAt is not null from JobStep where jobId = ? and position = ?',
        jobId,
        position,
      ),
      confirmed: get(
        'select confirmedAt is not null from StepDraw where jobId = ? and position = ?',
        jobId,
        position,
      ),
      used: get(`select coalesce(sum(centi), 0) from StockMove where kind = 'use'`),
      moves: get(`select count(*) from StockMove where kind = 'use'`),
      opened: get('select count(*) from Lot where openedOn is not null'),
      audit: get('select count(*) from AuditLine where at = ?', nowAt),
    }
  } finally {
    raw.close()
  }
}

describe('a process killed between finishing a step and its draw', { timeout: 300_000 }, () => {
  it('leaves both or neither, wherever in the transaction it dies', async () => {
    const act = await underWay()
    const outcomes: unknown[] = []
    let writes = 0
    for (let killAt = 1; ; killAt++) {
      const file = join(dir, `killed-${killAt}.db`)
      copyFileSync(join(dir, 'before.db'), file)
      const run = spawnSync(process.execPath, [killed, file, JSON.stringify(act), String(killAt)], {
        encoding: 'utf8',
      })
      if (run.signal === 'SIGKILL') {
        expect(found(file, act), `killed before write ${killAt}`).toEqual({
          finished: 0,
          confirmed: 0,
          used: 0,
          moves: 0,
          opened: 0,
          audit: 0,
        })
        outcomes.push(killAt)
        continue
      }
      expect(run.stderr).toBe('')
      writes = Number(run.stdout)
      // 60 ml are the whole of one bottle of 50 and 10 of the next.
      expect(found(file, act)).toEqual({
        finished: 1,
        confirmed: 1,
        used: -6000,
        moves: 2,
        opened: 2,
        audit: 2,
      })
      break
    }
    // The job, its step, the step's times, the moves, the bottles, the line, and the commit: it died before each.
    expect(outcomes.length).toBeGreaterThanOrEqual(6)
    expect(writes).toBe(outcomes.length)
  })
})
