import { expect, it } from 'vitest'
import { ownPace } from '../../../main/services/desk/beside.ts'
import { beginSpread, previewSpread, spreadStands, stopSpread } from '../../../main/services/upkeep/spread.ts'
import { duePlan, reminderDesk } from '../reminders/reminderDesk.ts'

async function threeDue() {
  const { desk, shop } = await reminderDesk(1)
  for (const [i, on] of ['2026-06-10', '2026-07-08', '2026-09-02'].entries())
    await duePlan(desk, shop.vehicles[i]!, on)
  return desk
}

it('is found beside the desk, with a turn for everybody else after each group of visits', async () => {
  const desk = await threeDue()
  const seen: string[] = []
  const pace = { ...ownPace(), turn: async () => Boolean(seen.push(`${pace.done} of ${pace.total}`)) }
  const found = await previewSpread(desk, pace)
  // The first while the plans were worked out, the second once the year is read.
  expect(seen).toEqual(['0 of 0', '0 of 0', '1 of 3', '2 of 3', '3 of 3'])
  beginSpread(desk)
  expect(spreadStands(desk)).toMatchObject({ working: { done: 0 }, result: null })
  while (spreadStands(desk).working) await new Promise(resolve => setImmediate(resolve))
  expect(spreadStands(desk)).toEqual({ working: null, result: found, failed: null })
})

it('stops where it is when asked, and shows nothing half done', async () => {
  const desk = await threeDue()
  beginSpread(desk)
  await stopSpread(desk)
  expect(spreadStands(desk)).toEqual({ working: null, result: null, failed: null })
})
