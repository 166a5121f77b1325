import { expect, it, vi } from 'vitest'
import { startFollowing } from '../../main/hosts/followTimer.ts'
import { uncostedRows } from '../../main/store/costRows.ts'
import { stalePlans } from '../../main/store/planDueRows.ts'
import { makeDesk } from '../services/makeDesk.ts'
import { duePlan } from '../services/reminders/reminderDesk.ts'
import { shelfShop, stock } from '../services/shelf/shelfShop.ts'

it('works out plans and costs by itself soon after the start, and is at rest once stopped', async () => {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  const shop = await shelfShop(desk)
  await stock(desk, shop.coating, shop.sizes.coating, 2)
  await duePlan(desk, shop.vehicles[0]!)
  const today = '2026-04-15'
  const left = async () =>
    (await stalePlans(desk.store.read, today, 10)).length + (await uncostedRows(desk.store.read, 10)).length
  expect(await left()).toBeGreaterThanOrEqual(2)
  vi.useFakeTimers({ toFake: ['setTimeout', 'setInterval', 'clearTimeout', 'clearInterval'] })
  try {
    const faults: unknown[] = []
    const stop = startFollowing(desk, error => faults.push(error))
    vi.advanceTimersByTime(5_000)
    while ((await left()) > 0) await new Promise(resolve => setImmediate(resolve))
    await stop()
    await duePlan(desk, shop.vehicles[1]!)
    vi.advanceTimersByTime(600_000)
    await new Promise(resolve => setImmediate(resolve))
    expect(await left()).toBe(1)
    expect(faults).toEqual([])
  } finally {
    vi.useRealTimers()
  }
})
