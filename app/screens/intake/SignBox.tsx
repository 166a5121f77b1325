import { Button, Group, Input } from '@mantine/core'
import { useEffect, useRef } from 'react'
import SignaturePad from 'signature_pad'
import { say } from '../../../main/domain/language/index.ts'
import styles from './Intake.module.css'

interface Props {
  /** The path of a picture 600 wide and 200 high; empty: nobody has signed. */
  value: string
  onChange(path: string): void
  error?: string | undefined
}

const size = { width: 600, height: 200 }
const mostLetters = 20_000

/** Where somebody signs with a finger, a pen or the mouse. */
export function SignBox({ value, onChange, error }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pad = useRef<SignaturePad>(null)
  const tell = useRef(onChange)
  tell.current = onChange
  useEffect(() => {
    const element = canvas.current
    if (!element) return
    const { width } = element.getBoundingClientRect()
    const sharp = window.devicePixelRatio
    element.width = width * sharp
    element.height = ((width * size.height) / size.width) * sharp
    element.getContext('2d')?.scale(sharp, sharp)
    const made = new SignaturePad(element, { penColor: getComputedStyle(element).color })
    made.addEventListener('endStroke', () => tell.current(pathOf(made, size.width / width)))
    pad.current = made
    return () => made.off()
  }, [])
  // Emptied from outside, as after it was sent.
  useEffect(() => {
    if (value === '') pad.current?.clear()
  }, [value])
  return (
    <Input.Wrapper label={say('Signature of the owner')} error={error} labelElement="div">
      <canvas
        ref={canvas}
        className={styles.sign}
        aria-label={say('Signature of the owner: sign here')}
        role="img"
      />
      <Group>
        <Button variant="default" onClick={() => onChange('')} disabled={value === ''}>
          {say('Clear the signature')}
        </Button>
      </Group>
    </Input.Wrapper>
  )
}

/** The strokes as one path between whole numbers, thinned until it may be kept. */
function pathOf(pad: SignaturePad, scale: number): string {
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

/** A signature as it was kept. */
export function Signature({ path, name }: { path: string; name: string }) {
  return (
    <svg
      className={styles.signed}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={say('Signature of {name}', { name })}
    >
      <path d={path.startsWith('M') ? path : ''} />
    </svg>
  )
}
