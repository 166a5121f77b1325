import { type KeyboardEvent, memo, type PointerEvent } from 'react'
import type { StayView } from '../../../../main/api/views.ts'
import styles from '../Board.module.css'
import { type Canvas, keyOf } from '../boardTypes.ts'
import { stayBox } from '../geometry/stayBox.ts'
import { stayWords } from '../stayWords.ts'
import { StayShape } from './StayShape.tsx'

export interface StayHandlers {
  onFocus(stay: StayView): void
  onKeyDown(stay: StayView, event: KeyboardEvent): void
  onPointerDown(stay: StayView, event: PointerEvent): void
  /** The pointer is on it, or it has the focus; null: not any more. */
  onPoint(stay: StayView | null): void
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
          <g key={key} className={lifted === key ? styles.lifted : undefined}>
            {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: the drawing takes no focus, the box over it does */}
            <g aria-hidden="true">
              <StayShape stay={stay} canvas={canvas} />
            </g>
            {/* biome-ignore lint/a11y/useSemanticElements: a button cannot be drawn inside an SVG */}
            <rect
              id={`stay-${key}`}
              role="button"
              tabIndex={chosen === key ? 0 : -1}
              aria-label={stayWords(stay, canvas.board.zone, canvas.board.nowAt)}
              className={styles.reach}
              x={box.x - 1}
              width={box.width + 2}
              y={box.top - 1}
              height={box.height + 2}
              rx={6}
              onFocus={() => {
                handlers.onFocus(stay)
                handlers.onPoint(stay)
              }}
              onBlur={() => handlers.onPoint(null)}
              onPointerEnter={() => handlers.onPoint(stay)}
              onPointerLeave={() => handlers.onPoint(null)}
              onKeyDown={event => handlers.onKeyDown(stay, event)}
              onPointerDown={event => handlers.onPointerDown(stay, event)}
            />
          </g>
        )
      })}
    </>
  )
})
