import { useEffect, useRef, useState } from 'react'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { Said } from '../../parts/Said.tsx'
import styles from './CloseOfDay.module.css'
import { StepCard } from './StepCard.tsx'

/** What today's steps used, one after the other; the last confirmation stays in words until the next. */
export function StepsToConfirm({ view }: { view: CloseOfDayView }) {
  const section = useRef<HTMLElement>(null)
  const [said, setSaid] = useState<string[]>([])
  const { stepsToConfirm: steps, done } = view
  const before = useRef(steps.length)
  useEffect(() => {
    // One step fewer: the next one's button is under the same finger.
    if (steps.length < before.current)
      (section.current?.querySelector<HTMLElement>('[data-confirm]') ?? section.current)?.focus()
    before.current = steps.length
  }, [steps.length])
  return (
    <Card
      ref={section}
      tabIndex={-1}
      className={styles.part}
      title="What was used"
      about={
        <>
          {steps.length === 0
            ? 'nothing left to confirm'
            : `${steps.length} ${steps.length === 1 ? 'step' : 'steps'} to confirm`}
          {done.stepsConfirmed > 0 && ` · ${done.stepsConfirmed} confirmed today`}
        </>
      }
    >
      <Said words={said} />
      {steps.length === 0 ? (
        <p className={pieces.empty}>
          Every finished step is confirmed. A step that draws something appears here when it is finished on
          its job; what it draws is set with its treatment’s recipe, on the product’s page.
        </p>
      ) : (
        <div className={pieces.divided}>
          {steps.map(step => (
            <StepCard
              key={`${step.jobId}-${step.position}`}
              step={step}
              zone={view.zone}
              date={view.date}
              onDone={({ words }) => setSaid(words)}
            />
          ))}
        </div>
      )}
    </Card>
  )
}
