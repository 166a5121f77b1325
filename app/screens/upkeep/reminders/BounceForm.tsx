import { Textarea } from '@mantine/core'
import { useState } from 'react'
import type { BounceView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import styles from '../Upkeep.module.css'

/** Mail that came back: the report is pasted, and its address is written to no more. */
export function BounceForm() {
  const [text, setText] = useState('')
  const [found, setFound] = useState<BounceView | null>(null)
  const saving = useSaving(trpc.reminders.bounce.mutationOptions())
  const faults = faultsOf(saving.error)
  return (
    <details className={styles.card}>
      <summary>A message came back</summary>
      <Form
        error={saving.error}
        label="A message came back"
        onSave={() =>
          saving.save({ text }, view => {
            setFound(view)
            setText('')
          })
        }
      >
        <Textarea
          label="The report, pasted whole"
          description="As the mail server sent it to the shop’s own address, headers and all"
          autosize
          minRows={5}
          maxRows={14}
          value={text}
          onChange={event => setText(event.currentTarget.value)}
          error={faults.at('text')}
        />
        <FormFoot faults={faults} busy={saving.busy} label="Read the report" dirty={text.trim() !== ''} />
      </Form>
      <div role="status">
        {found && (
          <>
            <p>{found.words}</p>
            <ul className={styles.plain}>
              {found.found.map(each => (
                <li key={each.address}>
                  {each.address}: {each.status}, {each.permanent ? 'for good' : 'for now'}
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </details>
  )
}
