import { Alert, Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { ConfirmedView, StepToConfirm } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { faultOf, queryClient, trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { labelOf, sizeChoices } from '../../parts/shopWords.ts'
import { clockWords, longWords } from '../../parts/time.ts'
import styles from './CloseOfDay.module.css'
import { DrawRow } from './DrawRow.tsx'
import { drawInput, proposedDraft } from './drawDraft.ts'

interface Props {
  step: StepToConfirm
  zone: string
  /** The day the list is of: a step finished on another one says so. */
  date: string
  onDone(view: ConfirmedView): void
}

/** One finished step and what it drew; one button where the proposal is right. */
export function StepCard({ step, zone, date, onDone }: Props) {
  const [drafts, setDrafts] = useState(() => step.draws.map(proposedDraft))
  // Told at once: once confirmed, the step leaves the list, and this card with it.
  const saving = useMutation(
    trpc.shelf.confirmDraws.mutationOptions({
      onSuccess: view => {
        onDone(view)
        return queryClient.invalidateQueries()
      },
    }),
  )
  const faults = faultsOf(saving.error)
  const refused = saving.error ? faultOf(saving.error) : null
  const { jobId, position, version, plate, stepName } = step
  const confirm = () =>
    saving.mutate({
      jobId,
      position,
      version,
      draws: step.draws.map((draw, i) => drawInput(draw, drafts[i]!)),
    })
  const rows = step.draws.map((draw, i) => (
    <DrawRow
      key={draw.productId}
      draw={draw}
      draft={drafts[i]!}
      change={draft => setDrafts(now => now.with(i, draft))}
      field={`draws.${i}`}
      faults={faults}
      beyondStock={refused?.reason === 'beyond-stock' && (refused.field?.startsWith(`draws.${i}`) ?? false)}
    />
  ))
  const rest = faults.rest()
  return (
    <div className={styles.step}>
      <Form error={saving.error} label={`What ${stepName} of ${plate} used`} onSave={confirm}>
        <header>
          <h3>
            <Link to="/jobs/$id" params={{ id: jobId }}>
              {plate}
            </Link>{' '}
            {stepName}
          </h3>
          <small>
            {labelOf(sizeChoices, step.sizeClass).toLowerCase()} · finished{' '}
            {dateOf(step.finishedAt, zone) === date
              ? clockWords(step.finishedAt, zone)
              : longWords(step.finishedAt, zone)}
            {step.crew.length > 0 && ` · ${step.crew.join(', ')}`}
          </small>
          <Button
            type="submit"
            loading={saving.isPending}
            data-confirm
            aria-label={`Confirm ${stepName} of ${plate}`}
          >
            Confirm
          </Button>
        </header>
        {rows}
        {rest && (
          <Alert color="red" variant="outline" role="alert">
            {rest}
          </Alert>
        )}
      </Form>
    </div>
  )
}
