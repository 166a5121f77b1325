import type { KeyboardEvent, PointerEvent } from 'react'
import { useRef } from 'react'
import styles from './Grip.module.css'

interface Props {
  label: string
  /** What it stands at, the least and the most it may, and the same in words. */
  now: number
  least: number
  most: number
  text: string
  /** Its place in the picture around it, 0 at the left and 1 at the right; and down, where not in its middle. */
  at: number
  down?: number
  /** Dragged to this place. */
  onDrag(at: number): void
  /** Taken hold of, and let go. */
  onHold?: (held: boolean) => void
  /** Moved by so many steps with the keyboard: 1 a step, 4 a leap, more than any to its end. */
  onStep(by: number): void
  className?: string | undefined
  children?: string | undefined
}

const stepsOf: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -4,
  PageUp: 4,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
}

/** A point of a picture that is moved along it, by the mouse, a finger or the arrow keys. */
export function Grip(props: Props) {
  const { label, now, least, most, text, at, down, onDrag, onHold, onStep, className = '', children } = props
  /** How far from its middle it was taken hold of, and the room it moves in. */
  const hold = useRef<{ off: number; left: number; width: number } | null>(null)
  const take = (event: PointerEvent<HTMLElement>) => {
    const room = event.currentTarget.parentElement?.getBoundingClientRect()
    if (event.button !== 0 || !room) return
    const { left, width } = room
    hold.current = { off: event.clientX - (left + at * width), left, width }
    event.currentTarget.setPointerCapture(event.pointerId)
    onHold?.(true)
  }
  const follow = (event: PointerEvent) => {
    if (!hold.current) return
    const { off, left, width } = hold.current
    onDrag(Math.min(1, Math.max(0, (event.clientX - off - left) / width)))
  }
  const letGo = () => {
    hold.current = null
    onHold?.(false)
  }
  const keys = (event: KeyboardEvent) => {
    const by = stepsOf[event.key]
    if (by === undefined || event.ctrlKey || event.altKey || event.metaKey) return
    event.preventDefault()
    onStep(by)
  }
  return (
    <span
      className={`${styles.grip} ${className}`}
      style={{ left: `${at * 100}%`, ...(down !== undefined && { top: `${down * 100}%` }) }}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={now}
      aria-valuetext={text}
      title={`${label}: ${text}`}
      onPointerDown={take}
      onPointerMove={follow}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onKeyDown={keys}
    >
      {children}
    </span>
  )
}
