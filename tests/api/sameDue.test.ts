/** Due visits from what is kept of each plan, against every plan worked out anew. */
import { expect, it } from 'vitest'
import { dateOf } from '../../main/domain/calendar/index.ts'
import { dueList } from '../../main/domain/upkeep/index.ts'
import { act } from '../../main/services/desk/desk.ts'
import { shopCalendar } from '../../main/services/reminders/feeds.ts'
import { dueForReminder } from '../../main/services/reminders/wanted.ts'
import { carAway, skipVisit } from '../../main/services/upkeep/acts.ts'
import { dueVisits } from '../../main/services/upkeep/dueVisits.ts'
import { keptPlans } from '../../main/services/upkeep/kept.ts'
import { applySpread, previewSpread } from '../../main/services/upkeep/spread.ts'
import { upkeepDay } from '../../main/services/upkeep/visits.ts'
import { openYear, upkeepYear, yearFrame } from '../../main/services/upkeep/year.ts'
import { yearsNowAt } from '../bench/years/fillYears.ts'
import { yearsShop } from './yearsShop.ts'

const zone = 'America/New_York'
const dayAfter = (days: number) => dateOf(yearsNowAt + days * 1440, zone)

it('lists, counts and spreads over the year what every plan gives', async () => {
  const { desk } = await yearsShop()
  const tx = desk.store.read
  let nowAt = yearsNowAt
  const now = { ...desk, now: () => nowAt }
  const every = async (from: string, until: string) => {
    const day = await upkeepDay(tx, nowAt)
    const kept = await keptPlans(tx)
    const kinds = new Map(kept.map(each => [each.row.id, each.plan.kind]))
    return dueList(kept, { ...day, until })
      .filter(visit => visit.dueOn >= from || (!visit.projected && visit.dueOn < day.today))
      .map(visit => ({ ...visit, kind: kinds.get(visit.planId) }))
  }
  const inOrder = <T extends { dueOn: string; planId: string }>(list: readonly T[]) =>
    list.toSorted((a, b) => (a.dueOn + a.planId < b.dueOn + b.planId ? -1 : 1))
  const compare = async () => {
    for (const [from, to] of [
      [-20, 30],
      [40, 70],
      [0, 364],
    ] as const) {
      const [fromDate, toDate] = [dayAfter(from), dayAfter(to)]
      const all = inOrder(await every(fromDate, toDate))
      const found = await dueVisits(now, { fromDate, toDate, limit: 5_000 })
      expect(
        inOrder(found.visits).map(({ planId, ruleOn, dueOn, firstOn, lastOn, state, projected, kind }) => ({
          planId,
          ruleOn,
          dueOn,
          firstOn,
          lastOn,
          state,
          projected,
          kind,
        })),
      ).toEqual(all)
      expect(found.total).toBe(all.length)
      const first = await dueVisits(now, { fromDate, toDate, limit: 50 })
      expect(first.visits.map(visit => visit.key)).toEqual(found.visits.slice(0, 50).map(visit => visit.key))
      expect(first).toMatchObject({ total: found.total, counts: found.counts })
      const count = (state: string) => all.filter(each => !each.projected && each.state === state).length
      expect(found.counts).toEqual({
        overdue: count('overdue'),
        due: count('due'),
        soon: count('soon'),
        later: count('later'),
      })
      const filter = { kinds: ['topper' as const], states: ['overdue' as const, 'later' as const] }
      expect((await dueVisits(now, { fromDate, toDate, filter, limit: 50 })).total).toBe(
        all.filter(each => each.kind === 'topper' && ['overdue', 'later'].includes(each.state)).length,
      )
    }
    const frame = await yearFrame(tx, nowAt)
    const { due } = await openYear(tx, frame, await keptPlans(tx))
    const year = await upkeepYear(now)
    expect(year.weeks.reduce((sum, week) => sum + week.asDue, 0)).toBe(due.length)
    expect(year.weeks.reduce((sum, week) => sum + week.planned, 0)).toBe(due.length)
    const spread = await previewSpread(now)
    expect(spread?.weeks.map(week => week.asDue)).toEqual(year.weeks.map(week => week.asDue))
    for (const [i, { beginsOn, asDue }] of year.weeks.entries())
      expect(asDue).toBe(
        due.filter(
          ({ dueOn }) =>
            (i === 0 || dueOn >= beginsOn) && (i === 51 || dueOn < (year.weeks[i + 1]?.beginsOn ?? '')),
        ).length,
      )
    return year
  }
  await compare()
  // Some of what moves a day: a visit skipped, a car away, hours of the shop, the day itself.
  const some = (await dueVisits(now, { fromDate: dayAfter(0), toDate: dayAfter(60) })).visits.filter(
    visit => !visit.projected,
  )
  const [skipped, away] = [some[3]!, some.at(-5)!]
  await skipVisit(now, { planId: skipped.planId, ruleOn: skipped.ruleOn, why: 'not wanted' })
  await carAway(now, { vehicleId: away.vehicleId, from: dayAfter(1), to: dayAfter(200), why: 'sea' })
  await compare()
  await act(now, tx => tx.hoursException.create({ data: { date: dayAfter(12), hours: [] } }))
  const before = await compare()
  await applySpread(now)
  expect((await compare()).weeks).not.toEqual(before.weeks)
  nowAt += 9 * 1440
  await compare()
  await act(now, tx => tx.vehicle.update({ where: { id: skipped.vehicleId }, data: { archivedAt: nowAt } }))
  await compare()
  const { wanted, notWanted } = await dueForReminder(now)
  expect(wanted.length + notWanted.length).toBeGreaterThan(10)
  expect(await shopCalendar(now, { details: true })).toContain('BEGIN:VEVENT')
}, 120_000)
