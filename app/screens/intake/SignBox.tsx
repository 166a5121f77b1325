import { Checkbox } from '@mantine/core'
import { typedSignature } from '../../../main/domain/intake/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { SignaturePad, signatureSize } from '../../parts/SignaturePad.tsx'
import styles from './Intake.module.css'

interface Props {
  /** The path of a picture, or that the typed name stands for it; empty: nobody has signed. */
  value: string
  onChange(signature: string): void
  error?: string | undefined
}

/** Where the owner signs; without a hand for it, the typed name stands for the signature and the page says so. */
export function SignBox({ value, onChange, error }: Props) {
  const typed = value === typedSignature
  return (
    <SignaturePad
      label={say('Signature of the owner')}
      empty={value === '' || typed}
      onChange={drawn => onChange(drawn?.path ?? '')}
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

/** A signature as it was kept. */
export function Signature({ path, name }: { path: string; name: string }) {
  if (path === typedSignature) return <p>{say('Confirmed with the typed name: {name}', { name })}</p>
  return (
    <svg
      className={styles.signed}
      viewBox={`0 0 ${signatureSize.width} ${signatureSize.height}`}
      role="img"
      aria-label={say('Signature of {name}', { name })}
    >
      <path d={path.startsWith('M') ? path : ''} />
    </svg>
  )
}
