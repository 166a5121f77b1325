// Common practice, no source: what follows a coating and when.
import { expect, it } from 'vitest'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import { checkPlan } from '../../../../main/domain/upkeep/plan/plan.ts'
import { startingPlans } from '../../../../main/domain/upkeep/plan/startingPlans.ts'

it('a coated car is due for its first wash, check-up, topper and inspection on the days these name', () => {
  const plans = startingPlans(
    { handoverOn: '2026-04-15', firstWashDays: 7, checkUpDays: 30, topperDays: 180 },
    kind => kind,
  )
  for (const plan of plans) expect(() => checkPlan(plan, 'UTC')).not.toThrow()
  const car = { soldOn: null, away: [] }
  const due = plans.map(plan => nextDue(plan, [], car, { today: '2026-04-16', zone: 'UTC' }))
  expect(due).toMatchObject([
    { planId: 'first-wash', firstOn: '2026-04-22', dueOn: '2026-04-22', lastOn: '2026-05-06' },
    { planId: 'check-up', firstOn: '2026-05-08', dueOn: '2026-05-15', lastOn: '2026-05-29' },
    { planId: 'topper', firstOn: '2026-09-21', dueOn: '2026-10-12', lastOn: '2026-10-19' },
    { planId: 'inspection', firstOn: '2027-03-16', dueOn: '2027-04-15', lastOn: '2027-05-15' },
  ])
  const washed = [{ what: 'done', on: '2026-04-22', dueOn: '2026-04-22' }] as const
  expect(nextDue(plans[0]!, washed, car, { today: '2026-05-01', zone: 'UTC' }).dueOn).toBeNull()
})
