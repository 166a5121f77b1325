import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import type { Acts } from '../upkeep/useActs.tsx'
import type { CarForm } from './CarActs.tsx'
import { CarLine } from './CarLine.tsx'
import { InspectForm } from './InspectForm.tsx'
import { LayerForm } from './LayerForm.tsx'
import { Proposal } from './Proposal.tsx'

interface Props {
  car: CarView
  acts: Acts
  /** What is being written down. */
  form: CarForm | null
  onClose(): void
}

/** The car's life on one line, what is proposed of it, and what is entered into it. */
export function LifeCard({ car, acts, form, onClose }: Props) {
  return (
    <Card aria-label={say('Its life')}>
      <div className={pieces.column}>
        <CarLine car={car} />
        {car.proposals.map(proposal => (
          <Proposal
            key={`${proposal.planId} ${proposal.what} ${proposal.toOn}`}
            proposal={proposal}
            acts={acts}
          />
        ))}
        {car.missing && <p className={pieces.soft}>{car.missing}</p>}
        {car.layers.length === 0 && (
          <p className={pieces.soft}>
            {say(
              'Nothing on file lies on this car. A coating done here is entered by itself when its job is worked; one from before, or from elsewhere, is entered here.',
            )}
          </p>
        )}
        {form === 'look' && <InspectForm car={car} onDone={onClose} />}
        {form === 'layer' && <LayerForm car={car} onDone={onClose} />}
      </div>
    </Card>
  )
}
