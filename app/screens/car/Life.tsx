import { Alert, Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { CarView, LifeView, ProposalView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import type { Acts } from '../upkeep/useActs.tsx'
import { InspectForm } from './InspectForm.tsx'
import { LayerForm } from './LayerForm.tsx'
import { LifeChart } from './LifeChart.tsx'

const takenFrom: Readonly<Record<LifeView['exposureClass'], string>> = {
  gentle: say('Taken from cars of gentle exposure; what is seen on the car itself decides.'),
  ordinary: say('Taken from cars of ordinary exposure; what is seen on the car itself decides.'),
  harsh: say('Taken from cars of harsh exposure; what is seen on the car itself decides.'),
}

/** How long what is on the car lasts, by everything seen so far, and what that would change. */
export function Life({ car, acts }: { car: CarView; acts: Acts }) {
  const [form, setForm] = useState<'look' | 'layer' | null>(null)
  const { life, trouble, proposals, layers } = car
  return (
    <Card
      title={say('How long it lasts')}
      about={
        life &&
        say('{productName}, laid {laidOn}', {
          productName: life.productName,
          laidOn: fullDateWords(life.laidOn),
        })
      }
    >
      <div className={pieces.column}>
        {proposals.map(proposal => (
          <Proposal
            key={`${proposal.planId} ${proposal.what} ${proposal.toOn}`}
            proposal={proposal}
            acts={acts}
          />
        ))}
        {trouble && (
          <Alert color="orange" variant="outline" title={say('The inspections contradict each other')}>
            {trouble}
          </Alert>
        )}
        {life && (
          <>
            <LifeChart life={life} plate={car.plate} />
            {car.missing && <p>{car.missing}</p>}
            <details>
              <summary>{say('Why')}</summary>
              <p>{life.sentence}</p>
              <p className={pieces.soft}>{takenFrom[life.exposureClass]}</p>
            </details>
          </>
        )}
        {car.singleLooks > 0 && (
          <p className={pieces.soft}>
            {say(
              '{singleLooks, plural, one {One look} other {{singleLooks} looks}} at it without a second after the wash: what seemed gone may only have been clogged, so no life is learned from that.',
              { singleLooks: car.singleLooks },
            )}
          </p>
        )}
        {layers.length === 0 && (
          <p className={pieces.soft}>
            {say(
              'Nothing on file lies on this car. A coating done here is entered by itself when its job is worked; one from before, or from elsewhere, is entered here.',
            )}
          </p>
        )}
        {form === 'look' && <InspectForm car={car} onDone={() => setForm(null)} />}
        {form === 'layer' && <LayerForm car={car} onDone={() => setForm(null)} />}
        {form === null && (
          <Group>
            {layers.length > 0 && (
              <Button onClick={() => setForm('look')}>{say('Record an inspection')}</Button>
            )}
            <Button variant="default" onClick={() => setForm('layer')}>
              {say('Enter a coating or topper')}
            </Button>
          </Group>
        )}
      </div>
    </Card>
  )
}

/** A date the readings would move: nothing moves unless the desk says so. */
function Proposal({ proposal, acts }: { proposal: ProposalView; acts: Acts }) {
  const [declined, setDeclined] = useState(false)
  const saving = useSaving(trpc.upkeep.acceptProposal.mutationOptions())
  const { planId, what, fromOn, toOn, sentence } = proposal
  if (declined)
    return (
      <Group role="status" gap="sm">
        <span className={pieces.soft}>
          {say('Left as it is: due on {fromOn}.', { fromOn: fullDateWords(fromOn) })}
        </span>
        <Button variant="default" size="compact-sm" onClick={() => setDeclined(false)}>
          {say('Look again')}
        </Button>
      </Group>
    )
  return (
    <Alert
      variant="outline"
      color="orange"
      title={say('Proposed: {toOn} in place of {fromOn}', {
        toOn: fullDateWords(toOn),
        fromOn: fullDateWords(fromOn),
      })}
    >
      <p>{sentence}</p>
      <Refused of={saving.error} />
      <Group>
        <Button
          size="compact-md"
          loading={saving.busy}
          onClick={() => saving.save({ planId, what, toOn }, acts.done)}
        >
          {what === 'interval'
            ? say('Renew by this interval from now on')
            : say('Move it to {toOn}', { toOn: fullDateWords(toOn) })}
        </Button>
        <Button size="compact-md" variant="default" onClick={() => setDeclined(true)}>
          {say('Leave it')}
        </Button>
      </Group>
    </Alert>
  )
}
