import { useElementSize } from '@mantine/hooks'
import type { ReactNode } from 'react'

export interface ChartSize {
  width: number
  /** What one rem is in pixels: text and margins grow with the screen as everything else does. */
  rem: number
}

interface Props {
  className?: string | undefined
  children(size: ChartSize): ReactNode
}

/** Room for a chart: draws once its width is known, and again when it changes. */
export function MeasuredChart({ className, children }: Props) {
  const { ref, width } = useElementSize()
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return (
    <div ref={ref} className={className}>
      {width > 0 && children({ width, rem })}
    </div>
  )
}
