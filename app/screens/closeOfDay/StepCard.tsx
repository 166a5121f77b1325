import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { ConfirmedView, StepToConfirm } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say, withinSentence } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
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
  /** Leaves the filled button to another act of its screen. */
  quiet?: boolean
  /** Something else than proposed is being said. */
  onChange?(): void
  onDone(view: ConfirmedView): void
}

/** One finished step and what it drew; one button where the proposal is right. */
export function StepCard({ step, zone, date, quiet = false, onChange, onDone }: Props) {
  const { jobId, position, version, plate, stepName } = step
  const form = useForm({
    saved: { draws: step.draws.map(proposedDraft) },
    version,
    saving: trpc.shelf.confirmDraws.mutationOptions(),
    send: ({ draws }, version) => ({
      jobId,
      position,
      version,
      draws: step.draws.map((draw, i) => drawInput(draw, draws[i]!)),
    }),
    done: onDone,
  })
  const { faults } = form
  const drafts = form.value.draws
  const refused = form.error ? faultOf(form.error) : null
  const refusedOf = (i: number, reason: string) =>
    refused?.reason === reason && (refused.field?.startsWith(`draws.${i}`) ?? false)
  const rows = step.draws.map((draw, i) => (
    <DrawRow
      key={draw.productId}
      draw={draw}
      draft={drafts[i]!}
      change={draft => {
        onChange?.()
        form.change({ draws: drafts.with(i, draft) })
      }}
      field={`draws.${i}`}
      faults={faults}
      beyondStock={refusedOf(i, 'beyond-stock')}
      mixes={draw.look === 'mixes' || refusedOf(i, 'mixes-lots')}
    />
  ))
  return (
    <div className={styles.step}>
      <Form form={form} label={say('What {stepName} of {plate} used', { stepName, plate })} save={null}>
        <header>
          <h3>
            <Link to="/jobs/$id" params={{ id: jobId }}>
              {plate}
            </Link>{' '}
            {stepName}
          </h3>
          <small>
            {say('{sizeChoices} · finished {finishedAt}', {
              sizeChoices: withinSentence(labelOf(sizeChoices, step.sizeClass)),
              finishedAt:
                dateOf(step.finishedAt, zone) === date
                  ? clockWords(step.finishedAt, zone)
                  : longWords(step.finishedAt, zone),
            })}
            {step.crew.length > 0 && ` · ${step.crew.join(', ')}`}
          </small>
          <Button
            type="submit"
            variant={quiet ? 'default' : 'filled'}
            loading={form.busy}
            data-confirm
            aria-label={say('Confirm {stepName} of {plate}', { stepName, plate })}
          >
            {say('Confirm')}
          </Button>
        </header>
        {rows}
      </Form>
    </div>
  )
}
