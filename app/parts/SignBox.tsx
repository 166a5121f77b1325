import { Checkbox } from '@mantine/core'
import { typedSignature } from '../../main/domain/intake/index.ts'
import { say } from '../../main/domain/language/index.ts'
import { type Drawn, SignaturePad } from './SignaturePad.tsx'

interface Props {
  label: string
  /** What was drawn, or that the typed name stands for it; empty: nobody has signed. */
  value: string
  /** As what a drawing is kept. */
  keep: keyof Drawn
  onChange(signature: string): void
  error?: string | undefined
}

/** Where the owner signs; without a hand for it, the typed name stands for the signature and the page says so. */
export function SignBox({ label, value, keep, onChange, error }: Props) {
  const typed = value === typedSignature
  return (
    <SignaturePad
      label={label}
      empty={value === '' || typed}
      onChange={drawn => onChange(drawn?.[keep] ?? '')}
      error={error}
      beside={
        <Checkbox
          label={say('Confirmed with the typed name in place of a signature')}
          checked={typed}
          onChange={event => onChange(event.currentTarget.checked ? typedSignature : '')}
        />
      }
    />
  )
}
