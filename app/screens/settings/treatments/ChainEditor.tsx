import { SegmentedControl } from '@mantine/core'
import { IconChevronLeft, IconChevronRight, IconX } from '@tabler/icons-react'
import { useRef, useState } from 'react'
import type { ProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import type { TreatmentStep } from '../../../../main/domain/shop/index.ts'
import type { TreatmentTemplate } from '../../../../main/domain/treatment/index.ts'
import { faultOf } from '../../../data/trpc.ts'
import { durationText } from '../../../parts/durationText.ts'
import type { Faults } from '../../../parts/faults.ts'
import { IconAct } from '../../../parts/IconAct.tsx'
import { useKeyWords } from '../../../parts/keyWords.ts'
import { conditions, sizes } from '../../../parts/sizeAndPaint.ts'
import { Why } from '../../../parts/Why.tsx'
import { Chain } from './Chain.tsx'
import { movedTo, placeAfterMove } from './chainOrder.ts'
import { StepPanel } from './StepPanel.tsx'
import { refusedStep } from './StepRare.tsx'
import styles from './Treatments.module.css'
import { useChainDrag } from './useChainDrag.ts'
import { useLaid } from './useLaid.ts'

const chainKeys = [
  { keys: '← →', label: say('another step of the chain') },
  { keys: say('Shift ← →'), label: say('the step earlier, later') },
  { keys: say('Ins'), label: say('a new step after it') },
  { keys: say('Del'), label: say('the step out') },
]

interface Props {
  treatment: TreatmentTemplate
  products: ProductView[]
  offered: readonly string[]
  faults: Faults
  /** The last refusal; a new one about a step opens that step. */
  error: unknown
  onChange(steps: TreatmentStep[]): void
}

/** The steps of a treatment: the chain as one picture, and under it the fields of the step chosen in it. */
export function ChainEditor({ treatment, products, offered, faults, error, onChange }: Props) {
  useKeyWords(say('The chain of steps'), chainKeys)
  const steps = [...treatment.steps]
  const look = useLaid(treatment, products)
  const panel = useRef<HTMLFieldSetElement>(null)
  const [open, setOpen] = useState({ index: 0, fresh: false })
  const [more, setMore] = useState(false)
  const [heard, setHeard] = useState<unknown>(null)
  const refused = refusedStep(error ? faultOf(error).field : null)
  // During rendering, so that the field is there when the form goes to it.
  if (error !== heard) {
    setHeard(error)
    if (refused) setOpen({ index: refused.index, fresh: false })
    if (refused?.rare) setMore(true)
  }
  const chosen = Math.min(open.index, steps.length - 1)
  /** Text that cannot be read yet is not left behind with its step. */
  const leaves = (act: () => void) => {
    const unread = panel.current?.querySelector<HTMLElement>('[data-unreadable="true"]')
    if (unread) unread.focus()
    else act()
  }
  const choose = (index: number) => leaves(() => setOpen({ index, fresh: false }))
  const move = (from: number, to: number) =>
    leaves(() => {
      onChange(movedTo(steps, from, to))
      setOpen({ index: to, fresh: false })
    })
  const add = (place: number) =>
    leaves(() => {
      const model = steps[Math.max(0, place - 1)]!
      onChange(steps.toSpliced(place, 0, { ...model, name: '' }))
      setOpen({ index: place, fresh: true })
    })
  const remove = (index: number) => {
    onChange(steps.toSpliced(index, 1))
    setOpen({ index: Math.min(index, steps.length - 2), fresh: false })
  }
  const dragging = useChainDrag({
    onDrop: (held, place) => (held === 'new' ? add(place) : move(held, placeAfterMove(held, place))),
    onOut: index => steps.length > 1 && remove(index),
  })
  const { drag } = dragging
  const { laid } = look
  const whole = laid?.steps.reduce((sum, step) => sum + step.minutes + (step.waitMin ?? 0), 0) ?? 0
  const title = say('Step {index}', { index: chosen + 1 })
  return (
    <div className={styles.editor} ref={dragging.ref}>
      <div className={styles.look}>
        <SegmentedControl
          aria-label={say('Vehicle size')}
          size="sm"
          data={[...sizes]}
          value={look.size}
          onChange={look.setSize}
        />
        <SegmentedControl
          aria-label={say('Condition of the paint')}
          size="sm"
          data={[...conditions]}
          value={look.condition}
          onChange={look.setCondition}
        />
        {laid ? (
          <Why
            line={say('{handsOnMin} hands-on, {whole} with its cures', {
              handsOnMin: durationText(laid.handsOnMin),
              whole: durationText(whole),
            })}
            rest={laid.notes}
          />
        ) : (
          <span>{look.refused}</span>
        )}
      </div>
      <Chain
        steps={steps}
        size={look.size}
        laid={laid}
        products={products}
        chosen={chosen}
        dragging={dragging}
        wrong={index => refused?.index === index}
        onChoose={choose}
        onMove={move}
        onAdd={add}
        onRemove={remove}
      />
      <fieldset className={styles.step} ref={panel}>
        <legend>{title}</legend>
        <div className={styles.arrows}>
          <button
            type="button"
            className={styles.add}
            title={say('Adds a step after the chosen one; dragged, where it is let go')}
            onClick={() => dragging.wasDrag() || add(chosen + 1)}
            {...dragging.grips('new')}
          >
            {say('+ Step')}
          </button>
          <IconAct
            label={say('{title} earlier', { title })}
            icon={IconChevronLeft}
            disabled={chosen === 0}
            onClick={() => move(chosen, chosen - 1)}
          />
          <IconAct
            label={say('{title} later', { title })}
            icon={IconChevronRight}
            disabled={chosen === steps.length - 1}
            onClick={() => move(chosen, chosen + 1)}
          />
          <IconAct
            label={say('Take out {title}', { title })}
            icon={IconX}
            title={say('Or drag a step here')}
            data-bin
            data-over={drag?.to === 'out'}
            variant={drag && drag.held !== 'new' ? 'outline' : 'subtle'}
            color={drag && drag.held !== 'new' ? 'red' : 'gray'}
            disabled={steps.length === 1}
            onClick={() => remove(chosen)}
          />
        </div>
        <StepPanel
          key={`${chosen} ${steps.length}`}
          index={chosen}
          step={steps[chosen]!}
          products={products}
          offered={offered}
          faults={faults}
          fresh={open.fresh}
          more={more}
          onMore={setMore}
          onChange={next => onChange(steps.with(chosen, next))}
        />
      </fieldset>
      {faults.at('steps') && <p role="alert">{faults.at('steps')}</p>}
    </div>
  )
}
