import { useElementSize, useViewportSize } from '@mantine/hooks'
import { type KeyboardEvent, useMemo, useRef, useState } from 'react'
import type { BoardView, StayView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { keySaid } from '../../parts/keySaid.ts'
import { usePrinting } from '../../parts/printing.ts'
import { actionFor } from './actions/actions.ts'
import { type Canvas, keyOf } from './boardTypes.ts'
import { laneHeight } from './geometry/lanes.ts'
import { timeAxis } from './geometry/timeAxis.ts'
import { HoursLayer } from './layers/HoursLayer.tsx'
import { LiveLayer } from './layers/LiveLayer.tsx'
import { Patterns } from './layers/Patterns.tsx'
import { StaysLayer } from './layers/StaysLayer.tsx'
import { useDrag } from './move/useDrag.ts'
import type { MoveControl } from './move/useMove.ts'

interface Props {
  board: BoardView
  days: number
  /** The midnight the grid is counted from. */
  originAt: number
  control: MoveControl
  openJob(id: string): void
  /** Asks who is to do what of a car. */
  people(jobId: string): void
}

/** The drawing on paper, in pixels of a sheet laid across: it is then stretched to whatever paper there is. */
const paper = { width: 1020, room: 480, least: 42 }

/** How wide a closed minute is beside an open one: the more days, the tighter the nights. */
const foldOf = (days: number) => (days === 1 ? 0.3 : days <= 3 ? 0.22 : 0.1)

function rootPx(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
}

/** The drawing itself, in three layers by how often each changes. */
export function BoardCanvas({ board, days, originAt, control, openJob, people }: Props) {
  const { ref, width } = useElementSize()
  const viewport = useViewportSize()
  const printing = usePrinting()
  const svg = useRef<SVGSVGElement>(null)
  const [chosen, setChosen] = useState<string | null>(null)
  const [pointed, setPointed] = useState<string | null>(null)

  const { open, fromAt, toAt } = board
  const count = board.bays.length
  // Kept while only the bookings or the clocks change, so that a stay that has not changed is not drawn anew.
  const frame = useMemo<Omit<Canvas, 'board'> | null>(() => {
    if (width < 100) return null
    const unit = printing ? 1 : rootPx() / 16
    const room = printing ? paper.room : viewport.height - 330 * unit
    const least = printing ? paper.least : 66 * unit
    return {
      unit,
      axis: timeAxis(open, fromAt, toAt, 136 * unit, printing ? paper.width : width, foldOf(days)),
      lanes: { top: 44 * unit, height: laneHeight(room, count, least, 150 * unit), count },
    }
  }, [open, fromAt, toAt, count, days, width, viewport.height, printing])
  const canvas = useMemo<Canvas | null>(() => frame && { board, ...frame }, [board, frame])

  const drag = useDrag(canvas, control, originAt, openJob)
  const focus = (stay: StayView) => {
    setChosen(keyOf(stay))
    svg.current?.querySelector<SVGRectElement>(`[id="stay-${keyOf(stay)}"]`)?.focus()
  }
  const handlers = {
    onFocus: (stay: StayView) => setChosen(keyOf(stay)),
    onPointerDown: drag.press,
    onPoint: (stay: StayView | null) => setPointed(stay && keyOf(stay)),
    onKeyDown: (stay: StayView, event: KeyboardEvent) => {
      const key = keySaid(event)
      if (key === null) return
      const context = { board, stay, control, focus, open: openJob, people }
      const action = actionFor(key, context)
      if (!action) return
      event.preventDefault()
      event.stopPropagation()
      action.run(context, { shift: event.shiftKey })
    },
  }
  // The layer of stays is drawn anew only for a new canvas or choice; its handlers read what is current.
  const latest = useRef(handlers)
  latest.current = handlers
  const steady = useMemo(
    () => ({
      onFocus: (stay: StayView) => latest.current.onFocus(stay),
      onPointerDown: (...args: Parameters<typeof drag.press>) => latest.current.onPointerDown(...args),
      onKeyDown: (stay: StayView, event: KeyboardEvent) => latest.current.onKeyDown(stay, event),
      onPoint: (stay: StayView | null) => latest.current.onPoint(stay),
    }),
    [],
  )

  const shown = board.stays.find(stay => keyOf(stay) === chosen) ?? board.stays[0]
  const across = printing ? paper.width : Math.max(0, width)
  const height = canvas ? canvas.lanes.top + canvas.lanes.height * canvas.lanes.count + 22 * canvas.unit : 300
  return (
    <div ref={ref}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
      <svg
        ref={svg}
        width={across}
        height={height}
        viewBox={`0 0 ${across} ${height}`}
        role="group"
        aria-label={say('Bay board, {days} {days, plural, one {day} other {days}}', { days })}
        onPointerMove={drag.onPointerMove}
        onPointerUp={drag.onPointerUp}
        onPointerCancel={drag.onPointerCancel}
      >
        <Patterns />
        {canvas && (
          <>
            <HoursLayer canvas={canvas} />
            <StaysLayer
              canvas={canvas}
              chosen={shown ? keyOf(shown) : null}
              lifted={control.move ? keyOf(control.move.stay) : null}
              handlers={steady}
            />
            <LiveLayer
              canvas={canvas}
              move={control.move}
              pointed={board.stays.find(stay => keyOf(stay) === pointed) ?? null}
            />
          </>
        )}
      </svg>
    </div>
  )
}
