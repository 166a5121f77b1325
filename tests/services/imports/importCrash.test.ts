import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { makeDesk } from '../makeDesk.ts'
import { everyRow } from '../records/everyRow.ts'
import { testShop } from '../testShop.ts'

const program = fileURLToPath(new URL('killedImport.ts', import.meta.url))

it('a list cut off in the middle by a kill leaves nothing behind, and not cut off it is all there', async () => {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  await testShop(desk)
  const before = everyRow(desk)
  const run = (killAt: number) =>
    spawnSync(process.execPath, [program, desk.store.source.file, String(desk.now()), String(killAt)], {
      encoding: 'utf8',
    })
  const whole = 16
  for (const killAt of [1, 3, whole]) {
    expect(run(killAt)).toMatchObject({ signal: 'SIGKILL' })
    expect(everyRow(desk)).toEqual(before)
  }
  // 3,800 customers and their addresses, 1,000 at once, each piece with what it came in with.
  expect(run(0).stdout.trim()).toBe(String(whole))
  expect(await desk.store.read.importedRow.count({ where: { entity: 'customer' } })).toBe(3_800)
}, 120_000)
