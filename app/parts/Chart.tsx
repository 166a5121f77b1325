import { useElementSize } from '@mantine/hooks'
import type { ReactNode } from 'react'
import styles from './Chart.module.css'

export interface ChartSize {
  width: number
  /** What one rem is in pixels: text and margins grow with the screen as everything else does. */
  rem: number
}

interface Frame {
  /** The picture for those who cannot see it. */
  label: string
  /** The key to it, beneath. */
  caption?: ReactNode
}

interface Props<Shape> extends Frame {
  /** What is drawn in the room there is, and how high that is. */
  shape(size: ChartSize): Shape
  children(shape: Shape, size: ChartSize): ReactNode
  /** What lies over it, as large as it: what of a picture can be pressed. */
  over?: (shape: Shape) => ReactNode
}

/** The frame of a chart: drawn once its width is known, and again when it changes. */
export function Chart<Shape extends { height: number }>(props: Props<Shape>) {
  const { label, shape, caption, children, over } = props
  const { ref, width } = useElementSize()
  const size = { width, rem: Number.parseFloat(getComputedStyle(document.documentElement).fontSize) }
  const drawn = width > 0 ? shape(size) : null
  return (
    <figure className={styles.figure}>
      <div ref={ref} className={styles.room}>
        {drawn && (
          <svg className={styles.chart} width={width} height={drawn.height} role="img" aria-label={label}>
            {children(drawn, size)}
          </svg>
        )}
        {drawn && over?.(drawn)}
      </div>
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  )
}

interface DrawingProps extends Frame {
  /** The drawing's own units; it scales as a whole, its words with it. */
  box: { width: number; height: number }
  className?: string | undefined
  /** What lies over it, as large as it. */
  over?: ReactNode
  children: ReactNode
}

/** The frame of a drawing of one shape, as wide as its place. */
export function Drawing({ label, box, className = '', caption, over, children }: DrawingProps) {
  return (
    <figure className={`${styles.figure} ${className}`}>
      <div className={styles.whole}>
        <svg
          className={`${styles.chart} ${styles.scaled}`}
          viewBox={`0 0 ${box.width} ${box.height}`}
          role="img"
          aria-label={label}
        >
          {children}
        </svg>
        {over}
      </div>
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  )
}

interface RuleProps {
  /** Upright at this place, or across at this height. */
  x?: number
  y?: number
  from: number
  to: number
  className: string | undefined
}

/** A straight line, upright or across. */
export function Rule({ x, y, from, to, className }: RuleProps) {
  const ends = x === undefined ? { x1: from, x2: to, y1: y, y2: y } : { x1: x, x2: x, y1: from, y2: to }
  return <line {...ends} className={className} />
}

interface LevelProps {
  label: ReactNode
  x: number
  to: number
  y: number
  className: string | undefined
}

/** A line across at a level, which is named before it. */
export function Level({ label, x, to, y, className }: LevelProps) {
  return (
    <>
      <Rule y={y} from={x} to={to} className={className} />
      <text x={x - 6} y={y} dominantBaseline="middle" textAnchor="end">
        {label}
      </text>
    </>
  )
}
