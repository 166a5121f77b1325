import { Checkbox, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { DueState, PlanKind } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { ChoiceChips } from '../../../parts/ChoiceChips.tsx'
import { dueSigns, dueWords, kindChoices } from '../words.ts'
import styles from './Due.module.css'

export interface Filter {
  text: string
  kinds: PlanKind[]
  states: DueState[]
  reachable: boolean
  unbooked: boolean
  /** How far ahead, in days from today. */
  days: number
}

export const noFilter: Filter = {
  text: '',
  kinds: [],
  states: [],
  reachable: false,
  unbooked: false,
  days: 42,
}

const ahead = [
  { value: '21', label: say('the next 3 weeks') },
  { value: '42', label: say('the next 6 weeks') },
  { value: '91', label: say('the next 3 months') },
  { value: '364', label: say('the coming year') },
]

const stateChoices = (['overdue', 'due', 'soon', 'later'] as const).map(value => ({
  value,
  label: `${dueSigns[value]} ${dueWords[value]}`,
}))

/** What of the visits is listed. What is overdue is listed whatever the time ahead. */
export function DueFilter({ filter, onChange }: { filter: Filter; onChange(filter: Filter): void }) {
  const [open] = useState(filter.kinds.length > 0 || filter.reachable || filter.unbooked)
  const change = (part: Partial<Filter>) => onChange({ ...filter, ...part })
  return (
    <search className={styles.filter} aria-label={say('Visits||of upkeep')}>
      <TextInput
        label={say('Find')}
        placeholder={say('name, plate, car, visit')}
        value={filter.text}
        onChange={event => change({ text: event.currentTarget.value })}
      />
      <Select
        label={say('Due in')}
        data={ahead}
        allowDeselect={false}
        value={String(filter.days)}
        onChange={days => days && change({ days: Number(days) })}
      />
      <ChoiceChips
        label={say('How soon')}
        choices={stateChoices}
        value={filter.states}
        onChange={states => change({ states })}
      />
      <details className={styles.more} open={open || undefined}>
        <summary>{say('More filters')}</summary>
        <div>
          <ChoiceChips
            label={say('Visit')}
            choices={kindChoices}
            value={filter.kinds}
            onChange={kinds => change({ kinds })}
          />
          <div className={styles.boxes}>
            <Checkbox
              label={say('Only owners who may be reached')}
              checked={filter.reachable}
              onChange={event => change({ reachable: event.currentTarget.checked })}
            />
            <Checkbox
              label={say('Leave out what is booked')}
              checked={filter.unbooked}
              onChange={event => change({ unbooked: event.currentTarget.checked })}
            />
          </div>
        </div>
      </details>
    </search>
  )
}
