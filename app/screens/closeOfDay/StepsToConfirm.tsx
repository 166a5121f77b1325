import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { Said } from '../../parts/Said.tsx'
import { Say } from '../../parts/Say.tsx'
import { useScreenKeys } from '../../parts/useScreenKeys.ts'
import styles from './CloseOfDay.module.css'
import { StepCard } from './StepCard.tsx'
import { UsedTable } from './UsedTable.tsx'
import { keyOf, usedByProduct } from './used.ts'

/** What today's steps used: those that want a look first, the rest by product and confirmed with one key. */
export function StepsToConfirm({ view, quiet }: { view: CloseOfDayView; quiet: boolean }) {
  const section = useRef<HTMLElement>(null)
  const [said, setSaid] = useState<string[]>([])
  const [opened, setOpened] = useState<string[]>([])
  /** Opened and changed, or refused: no longer as planned. */
  const [changed, setChanged] = useState<string[]>([])
  const { stepsToConfirm: steps, done } = view
  const shown = steps.filter(step => !step.plain || opened.includes(keyOf(step)))
  const plain = steps.filter(step => step.plain && !changed.includes(keyOf(step)))
  const confirming = useSaving(trpc.shelf.confirmPlanned.mutationOptions(), {
    // The one that is in the way is opened: the rest goes through at the next press.
    onRefused: refused => {
      const [, at] = /^steps\.(\d+)\./.exec(faultOf(refused).field ?? '') ?? []
      const wants = plain[Number(at)]
      if (!wants) return
      setOpened(before => [...before, keyOf(wants)])
      setChanged(before => [...before, keyOf(wants)])
    },
  })
  const confirm = () => {
    if (plain.length > 0)
      confirming.save(
        { steps: plain.map(({ jobId, position, version }) => ({ jobId, position, version })) },
        ({ confirmed }) =>
          setSaid([
            say('{confirmed} {confirmed, plural, one {step} other {steps}} confirmed.', { confirmed }),
          ]),
      )
  }
  useScreenKeys({ c: confirm })
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
      title={say('Confirm usage')}
      about={
        <>
          {steps.length === 0
            ? say('nothing left to confirm')
            : say('{steps} {steps, plural, one {step} other {steps}} to confirm', { steps: steps.length })}
          {done.stepsConfirmed > 0 &&
            ` ${say('· {stepsConfirmed} confirmed today', { stepsConfirmed: done.stepsConfirmed })}`}
        </>
      }
    >
      <Said words={said} />
      {confirming.error !== null && (
        <p role="alert" className={pieces.late}>
          ⚑ {faultOf(confirming.error).message}
        </p>
      )}
      {steps.length === 0 ? (
        <p className={pieces.empty}>
          {say(
            'Every finished step is confirmed. A step that draws something appears here when it is finished on its job; what it draws is set with its treatment’s recipe, on the product’s page.',
          )}
        </p>
      ) : (
        <div className={pieces.divided}>
          {shown.map((step, i) => (
            <StepCard
              key={keyOf(step)}
              step={step}
              quiet={quiet || i > 0}
              zone={view.zone}
              date={view.date}
              onChange={() => setChanged(before => [...before, keyOf(step)])}
              onDone={({ words }) => setSaid(words)}
            />
          ))}
          {plain.length > 0 && (
            <div className={styles.plain}>
              <p>
                <Say
                  text="<b>{plain} {plain, plural, one {step} other {steps}} used what the recipe says.</b>"
                  values={{ plain: plain.length }}
                />
                <Button
                  data-confirm
                  variant={quiet || shown.length > 0 ? 'default' : 'filled'}
                  loading={confirming.busy}
                  onClick={confirm}
                  aria-keyshortcuts="C"
                >
                  {say('Confirm {plain, plural, one {it} other {the {plain}}} as planned', {
                    plain: plain.length,
                  })}
                </Button>
              </p>
              <UsedTable
                rows={usedByProduct({
                  ...view,
                  stepsToConfirm: plain.filter(step => !opened.includes(keyOf(step))),
                })}
                open={keys => setOpened(have => [...have, ...keys])}
              />
            </div>
          )}
        </div>
      )}
    </Card>
  )
}
