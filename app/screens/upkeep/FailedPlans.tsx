import { Link } from '@tanstack/react-router'
import type { FailedPlanView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'

/** Plans whose visits cannot be worked out, each with its reason and the way to the car where it is mended. */
export function FailedPlans({ plans }: { plans: readonly FailedPlanView[] }) {
  if (plans.length === 0) return null
  return (
    <Card title={say('Cannot be worked out')} about={plans.length}>
      <ul className={pieces.plain}>
        {plans.map(plan => (
          <li key={plan.planId}>
            <Link to="/cars/$id" params={{ id: plan.vehicleId }}>
              {plan.plate || say('a car without a plate')}
            </Link>{' '}
            {plan.customerName}, {plan.title}: <span className={pieces.soft}>{plan.why}</span>
          </li>
        ))}
      </ul>
    </Card>
  )
}
