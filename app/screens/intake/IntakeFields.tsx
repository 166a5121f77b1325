import type { IntakeDraft, IntakeView } from '../../../main/api/views.ts'
import { fieldsOf } from '../../data/fields.ts'
import type { Faults } from '../../parts/faults.ts'
import pieces from '../../parts/pieces.module.css'
import { Arrival } from './Arrival.tsx'
import { MarksPart } from './car/MarksPart.tsx'
import { GlossPart } from './gloss/GlossPart.tsx'
import { Photos } from './Photos.tsx'
import { ThicknessPart } from './thickness/ThicknessPart.tsx'

interface Props {
  record: IntakeView
  draft: IntakeDraft
  change(part: Partial<IntakeDraft>): void
  faults: Faults
}

/** Everything that is entered of a car as it comes. */
export function IntakeFields({ record, draft, change, faults }: Props) {
  const fields = fieldsOf(draft, change, name => faults.at(`draft.${name}`))
  return (
    <div className={pieces.column}>
      <MarksPart
        draft={draft}
        finishes={record.facts.finishes}
        photos={record.photos}
        change={change}
        error={faults.under('draft.defects')}
      />
      <Photos jobId={record.jobId} photos={record.photos} />
      <ThicknessPart
        record={record}
        measured={draft}
        change={change}
        error={faults.under('readings') ?? faults.under('draft.thickness')}
      />
      <GlossPart
        allowedGu={record.rules.glossAllowedGu}
        sets={draft.gloss}
        change={gloss => change({ gloss })}
        errorAt={name => faults.at(`draft.gloss.${name}`)}
      />
      <Arrival fields={fields} />
    </div>
  )
}
