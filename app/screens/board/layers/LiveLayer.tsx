import type { StayView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { clockWords } from '../../../parts/time.ts'
import styles from '../Board.module.css'
import { type Canvas, keyOf, rowOf } from '../boardTypes.ts'
import { laneTop } from '../geometry/lanes.ts'
import { overlapsOf } from '../geometry/overlaps.ts'
import type { Move } from '../move/useMove.ts'
import { AtPointer } from './AtPointer.tsx'
import { StayCard } from './StayCard.tsx'
import { StayShape } from './StayShape.tsx'

/** The only layer drawn again while something moves: the place being tried, and now. */
interface Props {
  canvas: Canvas
  move: Move | null
  /** The stay that is pointed at, focused or touched. */
  pointed: StayView | null
}

export function LiveLayer({ canvas, move, pointed }: Props) {
  const { board, axis, lanes, unit } = canvas
  const bottom = lanes.top + lanes.height * lanes.count
  const x = axis.x(board.nowAt)
  const nowShown = board.nowAt > axis.fromAt && board.nowAt < axis.toAt
  return (
    <g pointerEvents="none">
      {overlapsOf(board.stays).map(over => (
        <rect
          key={`${over.bayId} ${over.fromAt} ${over.toAt}`}
          data-testid="overlap"
          className={styles.overlap}
          x={axis.x(over.fromAt)}
          width={Math.max(4 * unit, axis.x(over.toAt) - axis.x(over.fromAt))}
          y={laneTop(lanes, rowOf(board, over.bayId)) + 3 * unit}
          height={lanes.height - 6 * unit}
        />
      ))}
      {move?.verdict?.ok &&
        move.verdict.stays.map(stay => <StayShape key={keyOf(stay)} stay={stay} canvas={canvas} ghost />)}
      {move && !move.verdict?.ok && <Target canvas={canvas} move={move} />}
      {nowShown && (
        // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a drawn group takes no focus
        <g aria-hidden="true">
          <line className={styles.now} x1={x} x2={x} y1={lanes.top - 6 * unit} y2={bottom} />
          <text
            className={styles.nowText}
            x={Math.min(x + 5 * unit, axis.right - 70 * unit)}
            y={bottom + 14 * unit}
          >
            {say('now {nowAt}', { nowAt: clockWords(board.nowAt, board.zone) })}
          </text>
        </g>
      )}
      {pointed && !move && <StayCard stay={pointed} canvas={canvas} />}
    </g>
  )
}

/** Where the stay would stand, before the answer or after a refusal. */
function Target({ canvas, move }: { canvas: Canvas; move: Move }) {
  const { axis, lanes, unit, board } = canvas
  const row = rowOf(board, move.bayId)
  const x = axis.x(move.startAt)
  const width = Math.max(8 * unit, axis.x(move.startAt + move.stay.toAt - move.stay.fromAt) - x)
  const box = { x, top: laneTop(lanes, row) + 7 * unit, height: lanes.height - 14 * unit }
  const { verdict } = move
  return (
    <>
      <rect
        className={verdict ? styles.refused : styles.asking}
        x={x}
        width={width}
        y={box.top}
        height={box.height}
        rx={5 * unit}
      />
      {verdict?.ok === false && (
        // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a drawn group takes no focus; the status line says the same aloud
        <g aria-hidden="true">
          <AtPointer canvas={canvas} box={box} tone="refused" testId="refused-here">
            {verdict.reasons.join(' ')}
          </AtPointer>
        </g>
      )}
    </>
  )
}
