import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import { afterAll, expect, it } from 'vitest'
import { agree } from '../upkeep/coatedCar.ts'
import { duePlan, reminderDesk } from './reminderDesk.ts'

const killed = fileURLToPath(new URL('./killedBatch.ts', import.meta.url))
const dir = mkdtempSync(join(tmpdir(), 'lustrum-batch-'))
afterAll(() => rmSync(dir, { recursive: true, force: true }))

/** A shop with one reminder due this morning, its file put aside. */
async function reminderDue(): Promise<number> {
  const { desk, shop } = await reminderDesk(1)
  try {
    await agree(desk, shop.vehicles[0]!)
    await duePlan(desk, shop.vehicles[0]!)
    const [{ file }] = (await desk.store.read.$queryRawUnsafe('select file from pragma_database_list')) as [
      { file: string },
    ]
    const raw = new Database(file)
    raw.prepare('vacuum into ?').run(join(dir, 'before.db'))
    raw.close()
    return desk.now()
  } finally {
    await desk.close()
  }
}

/** The places held in a database, and those of them that a message proposes. */
function heldIn(file: string): { held: string[]; proposed: string[] } {
  const raw = new Database(file)
  try {
    const held = raw.prepare(`select id from Job where status = 'held' order by id`).pluck().all() as string[]
    const slots = raw.prepare('select slots from Message').pluck().all() as string[]
    const proposed = slots.flatMap(text => (JSON.parse(text) as { jobId: string }[]).map(slot => slot.jobId))
    return { held, proposed: proposed.sort() }
  } finally {
    raw.close()
  }
}

it('a process killed while it writes reminders leaves no place held for nobody, and the next one goes on', {
  timeout: 300_000,
}, async () => {
  const nowAt = await reminderDue()
  const run = (file: string, killAt: number) =>
    spawnSync(process.execPath, [killed, file, String(nowAt), String(killAt)], { encoding: 'utf8' })
  let kills = 0
  for (let killAt = 1; ; killAt++) {
    const file = join(dir, `killed-${killAt}.db`)
    copyFileSync(join(dir, 'before.db'), file)
    const { signal, stderr } = run(file, killAt)
    const { held, proposed } = heldIn(file)
    expect(held, `killed before write ${killAt}`).toEqual(proposed)
    if (signal !== 'SIGKILL') {
      expect(stderr).toBe('')
      expect(held).toHaveLength(2)
      break
    }
    expect(held).toEqual([])
    kills++
  }
  // Two jobs with what they will draw, the message and the commit: it died before each.
  expect(kills).toBeGreaterThanOrEqual(4)
  expect(run(join(dir, 'killed-2.db'), 0).stderr).toBe('')
  expect(heldIn(join(dir, 'killed-2.db')).held).toHaveLength(2)
})
