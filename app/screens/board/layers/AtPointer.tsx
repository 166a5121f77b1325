import type { ReactNode } from 'react'
import styles from '../Board.module.css'
import type { Canvas } from '../boardTypes.ts'

interface Props {
  canvas: Canvas
  /** What it is about: the words stand below it, or above where there is no room. */
  box: { x: number; top: number; height: number }
  tone?: 'refused'
  testId: string
  children: ReactNode
}

/** Words beside what they are about, where the eye and the pointer are; never in the way of either. */
export function AtPointer({ canvas, box, tone, testId, children }: Props) {
  const { axis, lanes, unit } = canvas
  const width = 300 * unit
  const height = 132 * unit
  const bottom = lanes.top + lanes.height * lanes.count + 22 * unit
  const below = box.top + box.height + 6 * unit
  const above = below + height > bottom && box.top - height > 0
  const x = Math.max(0, Math.min(box.x, axis.right - width))
  return (
    <foreignObject
      data-testid={testId}
      x={x}
      y={above ? box.top - height - 6 * unit : Math.min(below, Math.max(0, bottom - height))}
      width={width}
      height={height}
      pointerEvents="none"
    >
      <div className={styles.atPointer} data-tone={tone} data-above={above}>
        <div>{children}</div>
      </div>
    </foreignObject>
  )
}
