import { typedSignature } from '../../../main/domain/intake/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { signatureSize } from '../../parts/SignaturePad.tsx'
import styles from './Intake.module.css'

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
