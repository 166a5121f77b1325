import { Button, Group, Input } from '@mantine/core'
import { type ReactNode, useEffect, useRef } from 'react'
import Pad from 'signature_pad'
import { say } from '../../main/domain/language/index.ts'
import styles from './SignaturePad.module.css'

/** A signature as it was drawn. */
export interface Drawn {
  /** The path of a picture 600 wide and 200 high. */
  readonly path: string
  /** The same as a PNG data address. */
  readonly picture: string
}

interface Props {
  label: string
  /** Nobody has signed, or it was taken back: the field is empty. */
  empty: boolean
  /** Given what was drawn with each stroke; null: it was cleared. */
  onChange(drawn: Drawn | null): void
  error?: string | undefined
  /** Stands beside the key that clears the field. */
  beside?: ReactNode
}

export const signatureSize = { width: 600, height: 200 }
const mostLetters = 20_000

/** A field to sign in, with a finger, a pen or the mouse. */
export function SignaturePad({ label, empty, onChange, error, beside }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pad = useRef<Pad>(null)
  const tell = useRef(onChange)
  tell.current = onChange
  useEffect(() => {
    const element = canvas.current
    if (!element) return
    const { width } = element.getBoundingClientRect()
    const sharp = window.devicePixelRatio
    element.width = width * sharp
    element.height = ((width * signatureSize.height) / signatureSize.width) * sharp
    element.getContext('2d')?.scale(sharp, sharp)
    const made = new Pad(element, { penColor: '#10182b', backgroundColor: '#ffffff' })
    const scale = signatureSize.width / width
    const ended = () => tell.current({ path: pathOf(made, scale), picture: made.toDataURL('image/png') })
    made.addEventListener('endStroke', ended)
    pad.current = made
    return () => {
      made.removeEventListener('endStroke', ended)
      made.off()
    }
  }, [])
  // Emptied from outside, as after it was sent.
  useEffect(() => {
    if (empty) pad.current?.clear()
  }, [empty])
  return (
    <Input.Wrapper label={label} error={error} labelElement="div">
      <canvas
        ref={canvas}
        className={styles.field}
        aria-label={say('{label}: sign here', { label })}
        role="img"
      />
      <Group gap="md">
        <Button variant="default" onClick={() => onChange(null)} disabled={empty}>
          {say('Clear the signature')}
        </Button>
        {beside}
      </Group>
    </Input.Wrapper>
  )
}

/** The strokes as one path between whole numbers, thinned until it may be kept. */
function pathOf(pad: Pad, scale: number): string {
  const strokes = pad
    .toData()
    .map(({ points }) => points.map(({ x, y }) => [Math.round(x * scale), Math.round(y * scale)] as const))
  for (let apart = 2; ; apart *= 2) {
    const path = strokes.map(points => thinned(points, apart)).join('')
    if (path.length <= mostLetters) return path
  }
}

function thinned(points: readonly (readonly [number, number])[], apart: number): string {
  let last: readonly [number, number] | null = null
  return points
    .map(([x, y], i) => {
      if (x < 0 || y < 0) return ''
      const near = last !== null && Math.hypot(x - last[0], y - last[1]) < apart
      if (near && i < points.length - 1) return ''
      const letter = last === null ? 'M' : 'L'
      last = [x, y]
      return `${letter}${x} ${y}`
    })
    .join('')
}
