import { expect, test } from 'vitest'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { resultsSummary } from '../../../main/services/reminders/results.ts'
import { undoAct } from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { applySpread, previewSpread } from '../../../main/services/upkeep/spread.ts'
import { upkeepYear } from '../../../main/services/upkeep/year.ts'
import { makeDesk } from '../makeDesk.ts'

test('The demo has upkeep to do, lives to read, a year to level and results that bear no false precision', async () => {
  const desk = await makeDesk()
  try {
    await fillDemo(desk)
    const due = await dueVisits(desk, { fromDate: '2026-04-15', toDate: '2027-04-14' })
    expect(due.counts.overdue).toBeGreaterThan(0)
    expect(due.counts.due).toBeGreaterThan(2)
    expect(due.counts.soon).toBeGreaterThan(2)
    // Every car's life reads without contradiction.
    const vehicles = new Set(due.visits.map(visit => visit.vehicleId))
    let learned = 0
    for (const vehicleId of vehicles) {
      const car = await carUpkeep(desk, { vehicleId })
      expect(car.trouble).toBeNull()
      if ((car.life?.ended ?? 0) > 0) learned++
    }
    expect(learned).toBeGreaterThan(3)

    const year = await upkeepYear(desk)
    expect(year.weeks).toHaveLength(52)
    const spread = (await previewSpread(desk))!
    const before = year.weeks.reduce((sum, week) => sum + week.asDue, 0)
    expect(spread.weeks.reduce((sum, week) => sum + week.planned, 0)).toBe(before)
    const left = spread.left.length
    expect(
      spread.weeks.reduce((sum, week) => sum + Math.max(0, week.planned - week.room), 0),
    ).toBeLessThanOrEqual(left)
    const { actId } = await applySpread(desk)
    expect((await upkeepYear(desk)).weeks).toEqual(spread.weeks)
    await undoAct(desk, { actId })
    expect((await upkeepYear(desk)).weeks).toEqual(year.weeks)

    const { lines } = await resultsSummary(desk)
    expect(lines.length).toBeGreaterThan(1)
    for (const line of lines) expect(line.booked.words).toMatch(/^\d+ of \d+ booked$/)

    const { written } = await prepareBatch(desk)
    expect(written).toBeGreaterThanOrEqual(3)
    const { messages, notWritten } = await batch(desk)
    const drafts = messages.filter(each => each.state === 'draft')
    expect(drafts).toHaveLength(written)
    expect(drafts.every(each => each.unfilled.length === 0 && each.slots.length === 2)).toBe(true)
    expect(notWritten.length).toBeGreaterThan(0)
  } finally {
    await desk.close()
  }
}, 120_000)
