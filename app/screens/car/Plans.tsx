import { Button, Group } from '@mantine/core'
import type { CarView, PlanView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useEditing } from '../../data/editing.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import table from '../../parts/table.module.css'
import { fullDateWords } from '../../parts/time.ts'
import { VisitActs } from '../upkeep/due/VisitActs.tsx'
import type { Acts } from '../upkeep/useActs.tsx'
import { dueSigns, dueWords } from '../upkeep/words.ts'
import { PlanForm } from './PlanForm.tsx'

/** Every standing arrangement of the car, with its next visit and the reason for it. */
export function Plans({ car, acts }: { car: CarView; acts: Acts }) {
  const { editing, edit, close } = useEditing()
  const chosen = car.plans.find(plan => plan.id === editing)
  return (
    <Card title={say('When it comes')}>
      <div className={pieces.column}>
        {car.plans.length === 0 && (
          <p className={pieces.soft}>
            {say('No plan yet. Plans begin by themselves when a coated car goes home, or are added here.')}
          </p>
        )}
        {car.plans.length > 0 && (
          <div className={table.across}>
            <table className={table.table}>
              <HeadRow columns={[say('Plan'), say('Next'), say('(What may be done)')]} />
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
                        <span className={plan.next.state === 'overdue' ? pieces.late : undefined}>
                          {dueSigns[plan.next.state]} {dueWords[plan.next.state]},{' '}
                          {fullDateWords(plan.next.dueOn)}
                        </span>
                      )}
                      {plan.next ? (
                        <details className={pieces.soft}>
                          <summary aria-label={say('Why then: {title}', { title: plan.title })}>
                            {say('why then')}
                          </summary>
                          <small>{plan.sentence}</small>
                        </details>
                      ) : (
                        <small>{plan.sentence}</small>
                      )}
                    </td>
                    <td>
                      <Group gap={6} wrap="nowrap">
                        {plan.next && <VisitActs quiet visit={plan.next} today={car.today} acts={acts} />}
                        <RowButton
                          does={say('Change')}
                          of={say('the plan {title}', { title: plan.title })}
                          onClick={edit(plan.id)}
                        />
                      </Group>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
        {editing === null ? (
          <div>
            <Button variant="default" onClick={edit('new')}>
              {say('Add a plan')}
            </Button>
          </div>
        ) : (
          <>
            <PlanForm key={editing} car={car} plan={chosen} onDone={close} />
            {chosen && <EndPlan plan={chosen} onDone={close} />}
          </>
        )}
      </div>
    </Card>
  )
}

function EndPlan({ plan, onDone }: { plan: PlanView; onDone(): void }) {
  const saving = useSaving(trpc.upkeep.archivePlan.mutationOptions())
  return (
    <div>
      <Refused of={saving.error} />
      <Button
        variant="subtle"
        color="red"
        loading={saving.busy}
        onClick={() => saving.save({ id: plan.id, version: plan.version }, onDone)}
      >
        {say('End this plan')}
      </Button>
    </div>
  )
}
