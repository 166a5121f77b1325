import { expect, it } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import { dueForReminder } from '../../../main/services/reminders/wanted.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { followDue } from '../../../main/services/upkeep/planDue.ts'
import { upkeepDay } from '../../../main/services/upkeep/visits.ts'
import { turnsDuring } from '../../turns.ts'
import { duePlan, reminderDesk } from '../reminders/reminderDesk.ts'

/** A shop with more plans than a reader waits for, none of them worked out. */
async function manyPlans(count: number) {
  const { desk, shop } = await reminderDesk(1)
  const planId = await duePlan(desk, shop.vehicles[0]!)
  await act(desk, async tx => {
    const { id: _, ...plan } = await tx.upkeepPlan.findUniqueOrThrow({ where: { id: planId } })
    await tx.upkeepPlan.createMany({ data: Array.from({ length: count - 1 }, () => plan) })
  })
  const day = await upkeepDay(desk.store.read, desk.now())
  return { desk, day }
}

it('is worked out in pieces with turns for everybody else, up to what a reader waits for', async () => {
  const { desk, day } = await manyPlans(2_350)
  const window = { fromDate: '2026-04-15', toDate: '2026-05-15' }
  let list: Awaited<ReturnType<typeof dueVisits>> | undefined
  const turns = await turnsDuring(
    dueVisits(desk, window).then(read => {
      list = read
    }),
  )
  expect(turns).toBeGreaterThanOrEqual(20)
  expect(list).toMatchObject({ behind: 350, total: 2_000 })
  // The next reader finds the rest done, and so does whoever waits for all of it.
  expect((await dueForReminder(desk)).behind).toBe(0)
  expect(await followDue(desk, day)).toBe(0)
  expect((await dueVisits(desk, window)).total).toBe(2_350)
})

it('goes on to the last plan where that is asked, and ends where it is when stopped', async () => {
  const { desk, day } = await manyPlans(2_150)
  let pieces = 0
  const pace = { done: 0, total: 0, turn: async () => ++pieces <= 2 }
  expect(await followDue(desk, day, Number.POSITIVE_INFINITY, pace)).toBe(1_950)
  expect(await followDue(desk, day, Number.POSITIVE_INFINITY)).toBe(0)
})
