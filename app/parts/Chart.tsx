import { useElementSize } from '@mantine/hooks'
import type { ReactNode } from 'react'
import styles from './Chart.module.css'

export interface ChartSize {
  width: number
  /** What one rem is in pixels: text and margins grow with the screen as everything else does. */
  rem: number
}

interface Props<Shape> {
  /** The picture for those who cannot see it. */
  label: string
  /** What is drawn in the room there is, and how high that is. */
  shape(size: ChartSize): Shape
  /** The key to it, beneath. */
  caption?: ReactNode
  children(shape: Shape, size: ChartSize): ReactNode
}

/** The frame of a chart: drawn once its width is known, and again when it changes. */
export function Chart<Shape extends { height: number }>({ label, shape, caption, children }: Props<Shape>) {
  const { ref, width } = useElementSize()
  const size = { width, rem: Number.parseFloat(getComputedStyle(document.documentElement).fontSize) }
  const drawn = width > 0 ? shape(size) : null
  return (
    <figure className={styles.figure}>
      <div ref={ref}>
        {drawn && (
          <svg className={styles.chart} width={width} height={drawn.height} role="img" aria-label={label}>
            {children(drawn, size)}
          </svg>
        )}
      </div>
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  )
}
