import styles from './Settings.module.css'

/** What a section is, and what it is for. */
export function Heading({ title, children }: { title: string; children: string }) {
  return (
    <div>
      <h2>{title}</h2>
      <p className={styles.lead}>{children}</p>
    </div>
  )
}
