import type { BlockView } from '../../../../main/api/views.ts'
import { intersection } from '../../../../main/domain/calendar/index.ts'
import { type CureProfile, cureCurve } from '../../../../main/domain/cure/index.ts'
import { cureAge } from '../../../parts/cureAge.ts'
import styles from '../Board.module.css'
import type { BlockCanvas } from '../boardTypes.ts'
import { type Box, curvePath } from '../geometry/curve.ts'

interface BlockProps {
  block: BlockView
  canvas: BlockCanvas
  box: Box
  /** Whether the step's name may stand in it. */
  named?: boolean
}

/** Hands-on work: solid while the shop is open; a step that pauses overnight shows the pause. */
function WorkBlock({ block, canvas, box, named }: BlockProps) {
  const { axis, board, unit } = canvas
  const pieces = intersection([{ from: block.fromAt, to: block.toAt }], board.open).filter(
    piece => piece.to > axis.fromAt && piece.from < axis.toAt,
  )
  const first = pieces[0]
  const width = first ? axis.x(first.to) - axis.x(first.from) : 0
  return (
    <g data-state={block.state}>
      {pieces.map(piece => (
        <rect
          key={piece.from}
          className={styles.work}
          x={axis.x(piece.from)}
          width={Math.max(2, axis.x(piece.to) - axis.x(piece.from) - 1)}
          y={box.top}
          height={box.height}
        />
      ))}
      {named && first && width > 30 * unit && (
        <text
          className={styles.workText}
          x={axis.x(first.from) + 6 * unit}
          y={box.top + box.height - 8 * unit}
        >
          {clipped(
            block.state === 'done' ? `${block.name} ✓` : block.name,
            (width - 10 * unit) / (6.6 * unit),
          )}
        </text>
      )}
    </g>
  )
}

function clipped(text: string, letters: number): string {
  return text.length <= letters ? text : `${text.slice(0, Math.max(0, Math.floor(letters) - 1))}…`
}

/**
 * A hold as its own cure curve, filled up to now: how far along the coat is, at a glance. A car that waits on after its
 * hold goes on curing, so its curve goes on over the hatching.
 */
function HoldBlock({ block, canvas, box }: BlockProps) {
  const { axis, board, unit } = canvas
  const profile: CureProfile | undefined = block.productId ? board.profiles[block.productId] : undefined
  const x = axis.x(block.fromAt)
  const width = Math.max(0, axis.x(block.toAt) - x)
  if (!profile || !block.cure)
    return <rect className={styles.wait} x={x} width={width} y={box.top} height={box.height} />
  const { degreeAt } = cureCurve(profile)
  const age = cureAge(block.cure)
  const { coatEndAt, tackFreeAt, topperAt, safeAt } = block.cure
  const degree = (elapsedMin: number) => degreeAt(age(coatEndAt + elapsedMin)).likely
  const inside = (at: number | null): at is number =>
    at !== null && at >= block.fromAt && at < block.toAt && at > axis.fromAt && at < axis.toAt
  const filledTo = Math.min(board.nowAt, block.toAt)
  const y = box.top + box.height - 6 * unit
  const mark = 3.6 * unit
  return (
    <g>
      {block.kind === 'hold' && (
        <rect className={styles.holdGround} x={x} width={width} y={box.top} height={box.height} />
      )}
      <path
        className={styles.holdSoft}
        d={curvePath(axis, coatEndAt, block.fromAt, block.toAt, box, degree)}
      />
      {filledTo > block.fromAt && (
        <path className={styles.hold} d={curvePath(axis, coatEndAt, block.fromAt, filledTo, box, degree)} />
      )}
      {inside(tackFreeAt) && <path className={styles.mark} d={triangle(axis.x(tackFreeAt), y, mark)} />}
      {inside(topperAt) && <path className={styles.mark} d={diamond(axis.x(topperAt), y, mark * 1.15)} />}
      {inside(safeAt) && <circle className={styles.mark} cx={axis.x(safeAt)} cy={y} r={mark} />}
    </g>
  )
}

/** From here the car may be touched and moved. */
export function triangle(x: number, y: number, r: number): string {
  return `M${x} ${y - r}L${x + r} ${y + r}L${x - r} ${y + r}Z`
}

/** From here the topper may go on. */
export function diamond(x: number, y: number, r: number): string {
  return `M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}Z`
}

export function Block({ block, canvas, box, named = true }: BlockProps) {
  const outside = block.toAt <= canvas.axis.fromAt || block.fromAt >= canvas.axis.toAt
  if (outside || (block.kind === 'wait' && !block.cure)) return null
  return block.kind === 'work' ? (
    <WorkBlock block={block} canvas={canvas} box={box} named={named} />
  ) : (
    <HoldBlock block={block} canvas={canvas} box={box} />
  )
}
