import { type PointerEvent, useRef, useState } from 'react'
import { placeAt } from './chainOrder.ts'

/** A press that moves further than this many pixels drags; a shorter one chooses. */
const slack = 6

/** The step that is held by its place, or one that is not there yet. */
type Held = number | 'new'

export interface Drag {
  held: Held
  /** Before which step it would stand; 'out' over what takes it out. */
  to: number | 'out'
}

interface Hears {
  /** A step is let go before another one, or a new one is. */
  onDrop(held: Held, place: number): void
  onOut(index: number): void
}

/** Steps of the chain moved by the pointer, a mouse or a finger; `ref` is what holds the chain and, marked `data-bin`, what takes one out. */
export function useChainDrag({ onDrop, onOut }: Hears) {
  const ref = useRef<HTMLDivElement>(null)
  const grip = useRef<{ held: Held; x: number; y: number; middles: number[] } | null>(null)
  const moved = useRef(false)
  const now = useRef<Drag | null>(null)
  const [drag, setDrag] = useState<Drag | null>(null)
  const show = (next: Drag | null) => {
    now.current = next
    setDrag(next)
  }
  const end = () => {
    grip.current = null
    show(null)
  }
  const reach = (event: PointerEvent): Drag['to'] => {
    const bin = ref.current?.querySelector('[data-bin]')?.getBoundingClientRect()
    const over =
      bin &&
      event.clientX >= bin.left &&
      event.clientX <= bin.right &&
      event.clientY >= bin.top &&
      event.clientY <= bin.bottom
    return over ? 'out' : placeAt(grip.current?.middles ?? [], event.clientX)
  }
  return {
    ref,
    drag,
    /** Whether the press that ends in this click was a drag. */
    wasDrag: () => moved.current,
    cancel: end,
    grips: (held: Held) => ({
      onPointerDown(event: PointerEvent<HTMLElement>) {
        moved.current = false
        if (event.button !== 0) return
        const steps = ref.current?.querySelectorAll('[data-step]') ?? []
        const middles = [...steps].map(step => {
          const { left, width } = step.getBoundingClientRect()
          return left + width / 2
        })
        grip.current = { held, x: event.clientX, y: event.clientY, middles }
        event.currentTarget.setPointerCapture(event.pointerId)
      },
      onPointerMove(event: PointerEvent<HTMLElement>) {
        const at = grip.current
        if (!at) return
        if (!moved.current && Math.hypot(event.clientX - at.x, event.clientY - at.y) <= slack) return
        moved.current = true
        show({ held: at.held, to: reach(event) })
      },
      onPointerUp() {
        const dropped = now.current
        end()
        if (!dropped) return
        if (dropped.to !== 'out') onDrop(dropped.held, dropped.to)
        else if (dropped.held !== 'new') onOut(dropped.held)
      },
      onPointerCancel: end,
    }),
  }
}

export type Dragging = ReturnType<typeof useChainDrag>
