import { say } from '../../../../main/domain/language/index.ts'
import { clockWords } from '../../../parts/time.ts'
import styles from '../Board.module.css'
import { type Canvas, keyOf, rowOf } from '../boardTypes.ts'
import { laneTop } from '../geometry/lanes.ts'
import type { Move } from '../move/useMove.ts'
import { StayShape } from './StayShape.tsx'

/** The only layer drawn again while something moves: the place being tried, and now. */
export function LiveLayer({ canvas, move }: { canvas: Canvas; move: Move | null }) {
  const { board, axis, lanes, unit } = canvas
  const bottom = lanes.top + lanes.height * lanes.count
  const x = axis.x(board.nowAt)
  const nowShown = board.nowAt > axis.fromAt && board.nowAt < axis.toAt
  return (
    <g pointerEvents="none">
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
    </g>
  )
}

/** Where the stay would stand, before the answer or after a refusal. */
function Target({ canvas, move }: { canvas: Canvas; move: Move }) {
  const { axis, lanes, unit, board } = canvas
  const row = rowOf(board, move.bayId)
  const x = axis.x(move.startAt)
  const width = Math.max(8 * unit, axis.x(move.startAt + move.stay.toAt - move.stay.fromAt) - x)
  return (
    <rect
      className={move.verdict ? styles.refused : styles.asking}
      x={x}
      width={width}
      y={laneTop(lanes, row) + 7 * unit}
      height={lanes.height - 14 * unit}
      rx={5 * unit}
    />
  )
}
