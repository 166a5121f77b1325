import { Button, Group } from '@mantine/core'
import type { CarView, PlanView } from '../../../main/api/views.ts'
import { useEditing } from '../../data/editing.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { faultsOf } from '../../parts/faults.ts'
import { fullDateWords } from '../../parts/time.ts'
import { VisitActs } from '../upkeep/due/VisitActs.tsx'
import styles from '../upkeep/Upkeep.module.css'
import type { Acts } from '../upkeep/useActs.tsx'
import { dueSigns, dueWords } from '../upkeep/words.ts'
import { PlanForm } from './PlanForm.tsx'

/** Every standing arrangement of the car, with its next visit and the reason for it. */
export function Plans({ car, acts }: { car: CarView; acts: Acts }) {
  const { editing, edit, close } = useEditing()
  const chosen = car.plans.find(plan => plan.id === editing)
  return (
    <section className={styles.card} aria-labelledby="plans">
      <h2 id="plans">When it comes</h2>
      <div className={styles.stack}>
        {car.plans.length === 0 && (
          <p className={styles.soft}>
            No plan yet. Plans begin by themselves when a coated car goes home, or are added here.
          </p>
        )}
        {car.plans.length > 0 && (
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Plan</th>
                <th scope="col">Next, and why then</th>
                <th scope="col">Do</th>
              </tr>
            </thead>
            <tbody>
              {car.plans.map(plan => (
                <tr key={plan.id}>
                  <td>
                    <b>{plan.title}</b>
                    <small>
                      {plan.ruleWords}
                      {plan.productName && `, ${plan.productName}`}
                    </small>
                  </td>
                  <td>
                    {plan.next && (
                      <span className={plan.next.state === 'overdue' ? styles.late : undefined}>
                        {dueSigns[plan.next.state]} {dueWords[plan.next.state]},{' '}
                        {fullDateWords(plan.next.dueOn)}
                      </span>
                    )}
                    <small>{plan.sentence}</small>
                  </td>
                  <td>
                    <Group gap={6} wrap="nowrap">
                      {plan.next && <VisitActs visit={plan.next} today={car.today} acts={acts} />}
                      <Button
                        variant="default"
                        size="compact-sm"
                        aria-label={`Change the plan ${plan.title}`}
                        onClick={edit(plan.id)}
                      >
                        Change
                      </Button>
                    </Group>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        {editing === null ? (
          <div>
            <Button variant="default" onClick={edit('new')}>
              Add a plan
            </Button>
          </div>
        ) : (
          <>
            <PlanForm key={editing} car={car} plan={chosen} onDone={close} />
            {chosen && <EndPlan plan={chosen} onDone={close} />}
          </>
        )}
      </div>
    </section>
  )
}

function EndPlan({ plan, onDone }: { plan: PlanView; onDone(): void }) {
  const saving = useSaving(trpc.upkeep.archivePlan.mutationOptions())
  const words = faultsOf(saving.error).rest()
  return (
    <div>
      {words && <p className={styles.late}>{words}</p>}
      <Button
        variant="subtle"
        color="red"
        loading={saving.busy}
        onClick={() => saving.save({ id: plan.id, version: plan.version }, onDone)}
      >
        End this plan
      </Button>
    </div>
  )
}
