import type { StayView } from '../../../../main/api/views.ts'
import { isAmiss, standingWords } from '../../../../main/domain/floor/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { listWords } from '../../../../main/domain/words.ts'
import pieces from '../../../parts/pieces.module.css'
import { nearWords } from '../../../parts/time.ts'
import type { Canvas } from '../boardTypes.ts'
import { stayBox } from '../geometry/stayBox.ts'
import { AtPointer } from './AtPointer.tsx'

/** Whose car a stay is, what is done to it by whom, and how its promise stands: told by hover, focus and touch alike. */
export function StayCard({ stay, canvas }: { stay: StayView; canvas: Canvas }) {
  const box = stayBox(stay, canvas)
  if (!box) return null
  const { board } = canvas
  const when = (at: number) => nearWords(at, board.zone, board.nowAt)
  const step = stepNow(stay, board.nowAt)
  return (
    <AtPointer canvas={canvas} box={box} testId="stay-card">
      <b>{stay.plate}</b> {stay.customerName}
      {step && (
        <p>
          {step.crew.length === 0
            ? say('{step}, from {from}', { step: step.name, from: when(step.fromAt) })
            : say('{step}, from {from}: {people}', {
                step: step.name,
                from: when(step.fromAt),
                people: listWords(step.crew),
              })}
        </p>
      )}
      <p className={isAmiss(stay) ? pieces.late : pieces.kept}>{standingWords(stay, when)}</p>
      {stay.conflict && <p>{stay.conflict}</p>}
    </AtPointer>
  )
}

/** What is done to the car now, else what comes next, else what was done last. */
export function stepNow({ blocks }: Pick<StayView, 'blocks'>, nowAt: number) {
  const steps = blocks.filter(block => block.kind !== 'wait')
  return steps.find(block => block.toAt > nowAt) ?? steps.at(-1) ?? null
}
