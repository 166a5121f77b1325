import { Textarea } from '@mantine/core'
import { useState } from 'react'
import type { BounceView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Lines } from '../../../parts/Facts.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'

/** Mail that came back: the report is pasted, and its address is written to no more. */
export function BounceForm() {
  const [found, setFound] = useState<BounceView | null>(null)
  const form = useForm({
    saved: { text: '' },
    saving: trpc.reminders.bounce.mutationOptions(),
    send: value => value,
    done: setFound,
  })
  return (
    <details className={pieces.card}>
      <summary>{say('A message came back')}</summary>
      <Form form={form} label={say('A message came back')} save={say('Read the report')} ready={form.dirty}>
        <Textarea
          label={say('The report, pasted whole')}
          description={say('As the mail server sent it to the shop’s own address, headers and all')}
          autosize
          minRows={5}
          maxRows={14}
          {...form.field('text')}
        />
      </Form>
      <div role="status">
        {found && (
          <>
            <p>{found.words}</p>
            <Lines
              of={found.found.map(
                ({ address, status, permanent }) =>
                  `${address}: ${status}, ${permanent ? say('for good') : say('for now')}`,
              )}
            />
          </>
        )}
      </div>
    </details>
  )
}
