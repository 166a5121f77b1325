import type { InputHTMLAttributes, ReactNode } from 'react'
import styles from './Chip.module.css'

interface Props extends Omit<InputHTMLAttributes<HTMLInputElement>, 'type'> {
  /** Several at once, or one of a few. */
  type: 'checkbox' | 'radio'
  label: string
  /** What to know of it, in a few words: told by the mouse and to screen readers. */
  about?: string | undefined
}

/** One word that is on or off; what is chosen is filled. */
export function Chip({ type, label, about, ...input }: Props) {
  return (
    <label className={styles.chip} title={about}>
      <input {...input} type={type} aria-description={about} />
      <span>{label}</span>
    </label>
  )
}

/** Chips of one kind beside each other, named above them. */
export function Chips({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className={styles.chips}>
      <legend>{legend}</legend>
      {children}
    </fieldset>
  )
}
