/** Ten thousand invented cars with the starting plans and years of visits behind them. */
import { type PlanKind, startingPlans, type VisitRecord } from '../../../main/domain/upkeep/index.ts'
import type { DueEntry } from '../../../main/domain/upkeep/plan/dueList.ts'
import { type Random, seeded } from '../simulation/random.ts'

export const TODAY = '2026-04-15'
const today = Temporal.PlainDate.from(TODAY)
const ago = (days: number) => today.subtract({ days }).toString()

function visits(random: Random, everyDays: number, sinceDays: number): VisitRecord[] {
  const records: VisitRecord[] = []
  for (let left = sinceDays - everyDays; left > 0; left -= everyDays + Math.floor(random() * 40))
    records.push({ what: 'done', on: ago(left), dueOn: null })
  return records
}

/** `count` cars, four plans each, handed over in the last eight years; some sold, some away for the winter. */
export function dueCars(count: number, seed: number): DueEntry[] {
  const random = seeded(seed)
  const entries: DueEntry[] = []
  for (let i = 0; i < count; i++) {
    const since = 1 + Math.floor(random() * 2900)
    const topperDays = 120 + Math.floor(random() * 160)
    const start = { handoverOn: ago(since), firstWashDays: 10, checkUpDays: 30, topperDays }
    const car = {
      soldOn: random() < 0.03 ? ago(Math.floor(random() * since)) : null,
      away: random() < 0.1 ? [{ from: '2026-11-15', to: '2027-03-15' }] : [],
    }
    for (const plan of startingPlans(start, (kind: PlanKind) => `${i}-${kind}`)) {
      const { anchor } = plan
      const records: VisitRecord[] =
        anchor.to === 'last-done'
          ? visits(random, plan.kind === 'topper' ? topperDays : 365, since)
          : anchor.on < TODAY
            ? [{ what: 'done', on: anchor.on, dueOn: anchor.on }]
            : []
      entries.push({ plan, records, car })
    }
  }
  return entries
}
