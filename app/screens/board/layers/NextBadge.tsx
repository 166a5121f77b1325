import type { NextThingView } from '../../../../main/api/views.ts'
import styles from '../Board.module.css'
import type { Canvas } from '../boardTypes.ts'
import type { StayBox } from '../geometry/stayBox.ts'
import { nextWords } from '../nextWords.ts'

/** At the head of a curing car's stay: the next thing it may have done, and when. Left out where it has no room. */
export function NextBadge({ next, box, canvas }: { next: NextThingView; box: StayBox; canvas: Canvas }) {
  const { board, unit, axis } = canvas
  const words = nextWords(next, board.nowAt, board.zone)
  const width = (words.length * 6.9 + 14) * unit
  const height = 17 * unit
  const left = Math.max(box.x, axis.left)
  const right = Math.min(box.x + box.width, axis.right)
  if (right - left < width + 8 * unit) return null
  // Beside now, where the eye is; inside the stay.
  const x = Math.min(Math.max(axis.x(board.nowAt) + 6 * unit, left + 4 * unit), right - width - 4 * unit)
  const y = box.top + 25 * unit
  return (
    <g>
      <rect className={styles.badge} x={x} y={y} width={width} height={height} rx={height / 2} />
      <text className={styles.badgeText} x={x + 7 * unit} y={y + 12.4 * unit}>
        {words}
      </text>
    </g>
  )
}
