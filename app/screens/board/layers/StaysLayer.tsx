import { type KeyboardEvent, memo, type PointerEvent } from 'react'
import type { StayView } from '../../../../main/services/views.ts'
import styles from '../Board.module.css'
import { type Canvas, keyOf } from '../boardTypes.ts'
import { stayWords } from '../stayWords.ts'
import { StayShape, stayBox } from './StayShape.tsx'

export interface StayHandlers {
  onFocus(stay: StayView): void
  onKeyDown(stay: StayView, event: KeyboardEvent): void
  onPointerDown(stay: StayView, event: PointerEvent): void
}

interface Props {
  canvas: Canvas
  /** The stay that Tab reaches; arrows lead from it to the others. */
  chosen: string | null
  lifted: string | null
  handlers: StayHandlers
}

/** The stays as booked: drawn again when the bookings, the clock or the choice change, not while something is dragged. */
export const StaysLayer = memo(function StaysLayer({ canvas, chosen, lifted, handlers }: Props) {
  return (
    <>
      {canvas.board.stays.map(stay => {
        const key = keyOf(stay)
        const box = stayBox(stay, canvas)
        if (!box) return null
        return (
          // biome-ignore lint/a11y/useSemanticElements: a button cannot be drawn inside an SVG
          <g
            key={key}
            id={`stay-${key}`}
            role="button"
            tabIndex={chosen === key ? 0 : -1}
            aria-label={stayWords(stay, canvas.board.zone)}
            className={lifted === key ? `${styles.reach} ${styles.lifted}` : styles.reach}
            onFocus={() => handlers.onFocus(stay)}
            onKeyDown={event => handlers.onKeyDown(stay, event)}
            onPointerDown={event => handlers.onPointerDown(stay, event)}
          >
            <StayShape stay={stay} canvas={canvas} />
            <rect
              className={styles.ring}
              x={box.x - 2}
              width={box.width + 4}
              y={box.top - 2}
              height={box.height + 4}
              rx={7}
            />
          </g>
        )
      })}
    </>
  )
})
