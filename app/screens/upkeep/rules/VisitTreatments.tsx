import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { PlanKind, ReminderSettingsView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import pieces from '../../../parts/pieces.module.css'
import { choicesOf } from '../../../parts/shopWords.ts'
import { kindChoices } from '../words.ts'

interface Props {
  treatments: ReminderSettingsView['treatments']
  onChange(treatments: ReminderSettingsView['treatments']): void
  error: string | undefined
}

/** What is proposed to an owner for each kind of visit. */
export function VisitTreatments({ treatments, onChange, error }: Props) {
  const sold = useQuery(trpc.treatments.list.queryOptions({ archived: false })).data
  return (
    <details>
      <summary>{say('Treatments proposed for each kind of visit')}</summary>
      <div className={pieces.fields}>
        {kindChoices.map(({ value: kind, label }) => (
          <Select
            key={kind}
            label={label}
            placeholder={say('chosen from what is sold')}
            clearable
            clearButtonProps={{ 'aria-label': say('Clear {label}', { label }) }}
            data={choicesOf(sold)}
            value={treatments[kind] ?? null}
            onChange={id => onChange({ ...treatments, [kind satisfies PlanKind]: id })}
            error={error}
          />
        ))}
      </div>
    </details>
  )
}
