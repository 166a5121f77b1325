import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { MessageView, Outcome } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { ReadInput } from '../../../parts/ReadInput.tsx'
import styles from '../Upkeep.module.css'
import { outcomeChoices } from '../words.ts'

interface Props {
  message: MessageView
  onDone(words: string): void
}

/** What the owner answered; what follows from it is done at once and said. */
export function Outcomes({ message, onDone }: Props) {
  const [later, setLater] = useState(false)
  const [laterOn, setLaterOn] = useState<string | null>(null)
  const saving = useSaving(trpc.reminders.outcome.mutationOptions())
  const faults = faultsOf(saving.error)
  const record = (outcome: Outcome) =>
    saving.save(
      { messageId: message.id, outcome, ...(outcome === 'later' && laterOn ? { laterOn } : {}) },
      ({ words }) => {
        setLater(false)
        onDone(`✓ ${message.plate}: ${words ?? 'noted.'}`)
      },
    )
  return (
    <div>
      <h3>What came of it</h3>
      <Group gap="sm" role="group" aria-label="What came of it">
        {outcomeChoices.map(({ value, label, about }) => (
          <Button
            key={value}
            variant={message.outcome === value ? 'filled' : 'default'}
            aria-pressed={message.outcome === value}
            size="compact-md"
            title={about}
            loading={saving.busy && saving.error === null}
            onClick={() => (value === 'later' ? setLater(true) : record(value))}
          >
            {label}
          </Button>
        ))}
      </Group>
      {later ? (
        <Form error={saving.error} label="Ask again later" onSave={() => record('later')}>
          <div className={styles.fields}>
            <ReadInput<string | null>
              label="Ask again on"
              description="empty: as the rules say"
              type="date"
              value={laterOn}
              onChange={setLaterOn}
              read={text => (text === '' ? null : text)}
              show={date => date ?? ''}
              remedy="Give a whole date, or leave it empty."
              error={faults.at('laterOn')}
            />
          </div>
          <FormFoot faults={faults} busy={saving.busy} label="Save it">
            <Button variant="default" onClick={() => setLater(false)}>
              Not now
            </Button>
          </FormFoot>
        </Form>
      ) : (
        faults.rest() && (
          <p className={styles.late} role="alert">
            {faults.rest()}
          </p>
        )
      )}
    </div>
  )
}
