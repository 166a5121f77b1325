import { RestoreCopy } from '../../parts/copies/RestoreCopy.tsx'
import { Say } from '../../parts/Say.tsx'
import styles from './Welcome.module.css'

/** The way back for a shop whose computer is gone. */
export function RestoreOffer() {
  return (
    <details className={styles.restore}>
      <summary>
        <Say text="<b>Had a shop here, or on another computer?</b> Restore it from a copy." />
      </summary>
      <RestoreCopy zone={Temporal.Now.timeZoneId()} />
    </details>
  )
}
