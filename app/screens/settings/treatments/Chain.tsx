import { VisuallyHidden } from '@mantine/core'
import { type KeyboardEvent, useEffect, useRef } from 'react'
import type { ProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import type { Capability, TreatmentStep } from '../../../../main/domain/shop/index.ts'
import type { Laid } from '../../../../main/domain/treatment/index.ts'
import type { SizeClass } from '../../../../main/domain/vehicle/index.ts'
import { durationText } from '../../../parts/durationText.ts'
import styles from './Chain.module.css'
import { chainShape, holdPath, type Piece } from './chainShape.ts'
import type { Dragging } from './useChainDrag.ts'

const bays: Readonly<Record<Capability, string>> = {
  wet: say('wet bay'),
  polish: say('polishing bay'),
  clean: say('clean bay'),
  cure: say('bay to cure in'),
}

interface Props {
  steps: readonly TreatmentStep[]
  size: SizeClass
  laid: Laid | null
  products: readonly ProductView[]
  chosen: number
  dragging: Dragging
  /** Whether something in this step was refused. */
  wrong(index: number): boolean
  onChoose(index: number): void
  onMove(from: number, to: number): void
  /** A new step before this one. */
  onAdd(place: number): void
  onRemove(index: number): void
}

/** The chain of a treatment as it stands on the board, each step a button: chosen, moved, added and taken out here. */
export function Chain(props: Props) {
  const { steps, size, laid, products, chosen, wrong, onChoose, onMove, onAdd, onRemove } = props
  const buttons = useRef<(HTMLButtonElement | null)[]>([])
  const follow = useRef(false)
  useEffect(() => {
    if (follow.current) buttons.current[chosen]?.focus()
    follow.current = false
  })
  const { drag, wasDrag, cancel, grips } = props.dragging
  const byKey = (act: () => void) => {
    follow.current = true
    act()
  }
  const keys = (event: KeyboardEvent, index: number) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key]
    const to = by === undefined ? { Home: 0, End: steps.length - 1 }[event.key] : index + by
    if (event.key === 'Escape' && drag) cancel()
    else if (to !== undefined && steps[to]) byKey(() => (event.shiftKey ? onMove(index, to) : onChoose(to)))
    else if (event.key === 'Insert') onAdd(index + 1)
    else if (event.key === 'Delete' && steps.length > 1) byKey(() => onRemove(index))
    else if (to === undefined) return
    event.preventDefault()
  }
  const draw = (piece: Piece, i: number) => {
    const style = { flexGrow: piece.weight }
    if (piece.kind === 'wait')
      return (
        <li key={i} className={styles.wait} style={style}>
          <small>{say('wait {minutes}', { minutes: durationText(piece.minutes) })}</small>
        </li>
      )
    if (piece.kind === 'hold') return <Hold key={i} piece={piece} products={products} />
    const { index, minutes } = piece
    const name = steps[index]!.name.trim() || say('Step without a name')
    const time = minutes > 0 ? durationText(minutes) : say('left out')
    const bad = wrong(index)
    const words = say('Step {index}: {name}, {time}', { index: index + 1, name, time })
    return (
      <li key={i} style={style} data-step data-drop={dropAt(index)}>
        <button
          type="button"
          ref={button => {
            buttons.current[index] = button
          }}
          className={styles.work}
          aria-pressed={index === chosen}
          title={words}
          data-wrong={bad}
          data-empty={minutes === 0}
          data-held={drag?.held === index}
          onClick={() => wasDrag() || onChoose(index)}
          onKeyDown={event => keys(event, index)}
          {...grips(index)}
        >
          <VisuallyHidden>{say('Step {index}', { index: index + 1 })}: </VisuallyHidden>
          <b>{name}</b>
          <small>{time}</small>
          {bad && (
            <em>
              ⚑ <VisuallyHidden>{say('something is wrong in it')}</VisuallyHidden>
            </em>
          )}
        </button>
      </li>
    )
  }
  const dropAt = (index: number) => {
    if (drag?.to === index) return 'before'
    return drag?.to === steps.length && index === steps.length - 1 ? 'after' : undefined
  }
  return (
    <fieldset className={styles.chain} aria-label={say('The chain of steps')}>
      {chainShape(steps, size, laid?.steps ?? null).map((run, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the chain has no other order than its own
        <div key={i} className={styles.run} style={{ flexGrow: run.weight }}>
          <small>{bays[run.needs]}</small>
          <ol>{run.pieces.map(draw)}</ol>
        </div>
      ))}
    </fieldset>
  )
}

/** A cure hold as its own curve, with how long it lasts. */
function Hold(props: { piece: Extract<Piece, { kind: 'hold' }>; products: readonly ProductView[] }) {
  const { piece, products } = props
  const profile = products.find(product => product.id === piece.productId)?.cureProfile
  const least = durationText(piece.minutes)
  const time =
    piece.most === null ? least : say('{least} to {most}', { least, most: durationText(piece.most) })
  return (
    <li
      className={styles.hold}
      style={{ flexGrow: piece.weight }}
      title={`${piece.name}, ${time}`}
      data-folded={piece.folded}
    >
      {profile && (
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <path d={holdPath(profile, piece.age, piece.minutes)} />
        </svg>
      )}
      <small>
        {piece.name}, <span>{time}</span>
      </small>
    </li>
  )
}
