import { Link } from '@tanstack/react-router'
import type { FailedPlanView } from '../../../main/api/views.ts'
import styles from './Upkeep.module.css'

/** Plans whose visits cannot be worked out, each with its reason and the way to the car where it is mended. */
export function FailedPlans({ plans }: { plans: readonly FailedPlanView[] }) {
  if (plans.length === 0) return null
  return (
    <section className={styles.card} aria-labelledby="failed-plans">
      <h2 id="failed-plans">
        Cannot be worked out <small>{plans.length}</small>
      </h2>
      <ul className={styles.plain}>
        {plans.map(plan => (
          <li key={plan.planId}>
            <Link to="/cars/$id" params={{ id: plan.vehicleId }}>
              {plan.plate || 'a car without a plate'}
            </Link>{' '}
            {plan.customerName}, {plan.title}: <span className={styles.soft}>{plan.why}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
