import styles from './Money.module.css'

/** A row of a picture of amounts: its name, a bar as long as its share, and the amount. */
export function Bar({ name, share, amount }: { name: string; share: number; amount: string }) {
  return (
    <>
      <span>{name}</span>
      <span className={styles.bar} style={{ width: `${share * 100}%` }} />
      <span>{amount}</span>
    </>
  )
}
