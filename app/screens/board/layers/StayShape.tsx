import { memo } from 'react'
import type { StayView } from '../../../../main/api/views.ts'
import { isAmiss } from '../../../../main/domain/floor/index.ts'
import styles from '../Board.module.css'
import type { Canvas } from '../boardTypes.ts'
import { stayBox } from '../geometry/stayBox.ts'
import { Block } from './Blocks.tsx'
import { NextBadge } from './NextBadge.tsx'

interface ShapeProps {
  stay: StayView
  canvas: Canvas
  ghost?: boolean
}

/** Whether a stay looks the same: what came anew from the server keeps its identity where nothing in it changed. */
function isSame(a: ShapeProps, b: ShapeProps): boolean {
  const [was, is] = [a.canvas, b.canvas]
  return (
    a.stay === b.stay &&
    a.ghost === b.ghost &&
    was.axis === is.axis &&
    was.lanes === is.lanes &&
    was.unit === is.unit &&
    was.board.nowAt === is.board.nowAt &&
    was.board.bays === is.board.bays &&
    was.board.open === is.board.open &&
    was.board.profiles === is.board.profiles
  )
}

/** One car in one bay: who it is above, and below what is done to it, what cures and what only waits. */
export const StayShape = memo(function StayShape({ stay, canvas, ghost }: ShapeProps) {
  const box = stayBox(stay, canvas)
  if (!box) return null
  const { unit } = canvas
  const head = 21 * unit
  const frame = { x: box.x, width: box.width, y: box.top, height: box.height, rx: 5 * unit }
  const body = { top: box.top + head, height: box.height - head }
  const clip = `head-${ghost ? 'ghost' : 'stay'}-${stay.jobId}-${stay.fromAt}`
  const mark = stay.conflict ? '⚠ ' : isAmiss(stay) ? '⚑ ' : stay.status === 'held' ? '? ' : ''
  const plateLong = (stay.plate.length * 7.8 + 8) * unit
  // Too narrow for its plate, a stay carries it upright: a plate is read whole or not at all.
  const across = box.width >= plateLong + (mark ? 20 : 4) * unit
  const upright = !across && box.width >= 15 * unit && body.height >= plateLong
  return (
    <g
      className={styles.stay}
      data-held={stay.status === 'held'}
      data-conflict={stay.conflict !== null}
      data-ghost={ghost}
    >
      <rect className={styles.ground} {...frame} />
      {stay.blocks.map(block => (
        <Block
          key={`${block.position}-${block.kind}-${block.fromAt}`}
          block={block}
          canvas={canvas}
          box={body}
          named={across}
        />
      ))}
      <rect className={styles.head} {...frame} height={head} />
      <clipPath id={clip}>
        <rect x={box.x} width={Math.max(0, box.width - 4)} y={box.top} height={head} />
      </clipPath>
      <text clipPath={`url(#${clip})`} x={box.x + 6 * unit} y={box.top + 15 * unit}>
        {mark && <tspan className={styles.flag}>{mark}</tspan>}
        {across && (
          <>
            <tspan className={styles.plate} data-testid="plate">
              {stay.plate}
            </tspan>{' '}
            {stay.customerName}
          </>
        )}
      </text>
      {upright && (
        <text
          className={styles.upright}
          data-testid="plate"
          transform={`translate(${box.x + box.width / 2 + 4.5 * unit} ${body.top + body.height - 5 * unit}) rotate(-90)`}
        >
          {stay.plate}
        </text>
      )}
      {stay.next && !ghost && <NextBadge next={stay.next} box={box} canvas={canvas} />}
      <rect className={styles.edge} {...frame} />
    </g>
  )
}, isSame)
