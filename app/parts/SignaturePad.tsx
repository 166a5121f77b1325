import { Button, Group, Input } from '@mantine/core'
import { useEffect, useRef } from 'react'
import Pad from 'signature_pad'
import { say } from '../../main/domain/language/index.ts'
import styles from './SignaturePad.module.css'

interface Props {
  label: string
  /** Given the drawing as a PNG data address; empty when it is cleared. */
  onChange(signature: string): void
  error?: string | undefined
}

/** A field to sign in, with a finger, a pen or the mouse. */
export function SignaturePad({ label, onChange, error }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pad = useRef<Pad | null>(null)
  const told = useRef(onChange)
  told.current = onChange
  useEffect(() => {
    const element = canvas.current
    if (!element) return
    const made = new Pad(element, { penColor: '#10182b', backgroundColor: '#ffffff' })
    const ended = () => told.current(made.toDataURL('image/png'))
    made.addEventListener('endStroke', ended)
    pad.current = made
    return () => {
      made.removeEventListener('endStroke', ended)
      made.off()
    }
  }, [])
  return (
    <div>
      <Input.Label component="span">{label}</Input.Label>
      <canvas ref={canvas} width={480} height={160} className={styles.field} aria-label={label} role="img" />
      <Group gap="sm">
        <Button
          variant="default"
          size="compact-sm"
          onClick={() => {
            pad.current?.clear()
            onChange('')
          }}
        >
          {say('Clear the field')}
        </Button>
        {error && <Input.Error>{error}</Input.Error>}
      </Group>
    </div>
  )
}
