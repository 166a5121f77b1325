import { useEffect, useRef } from 'react'
import { say } from '../../../../main/domain/language/index.ts'
import { keySaid } from '../../../parts/keySaid.ts'
import styles from './Thickness.module.css'

interface Props {
  value: string
  onChange(value: string): void
  /** Takes what was typed. */
  onEnter(): void
  enter: string
}

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '⌫'] as const

/** A number pad for fingers in gloves; the keyboard types on it too, while it has the focus. */
export function NumberPad({ value, onChange, onEnter, enter }: Props) {
  const pad = useRef<HTMLFieldSetElement>(null)
  const press = (key: string) => {
    if (key === '⌫') return onChange(value.slice(0, -1))
    if (key === '.' && value.includes('.')) return
    if (value.length < 6) onChange(value + key)
  }
  const latest = useRef({ press, onEnter })
  latest.current = { press, onEnter }
  useEffect(() => {
    const element = pad.current
    const type = (event: KeyboardEvent) => {
      const said = keySaid(event)
      if (said === null) return
      const key = said === 'Backspace' ? '⌫' : said === ',' ? '.' : said
      if ((keys as readonly string[]).includes(key)) latest.current.press(key)
      // Enter on a key presses that key.
      else if (event.key === 'Enter' && event.target === element) latest.current.onEnter()
      else return
      event.preventDefault()
      event.stopPropagation()
    }
    element?.addEventListener('keydown', type)
    return () => element?.removeEventListener('keydown', type)
  }, [])
  return (
    <fieldset ref={pad} className={styles.pad} aria-label={say('Number pad')} tabIndex={-1}>
      {keys.map(key => (
        <button
          key={key}
          type="button"
          onClick={() => press(key)}
          aria-label={key === '⌫' ? say('Delete the last digit') : key}
        >
          {key}
        </button>
      ))}
      <button type="button" className={styles.enter} onClick={onEnter} disabled={value === ''}>
        {enter}
      </button>
    </fieldset>
  )
}
