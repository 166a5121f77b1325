import { NativeSelect } from '@mantine/core'
import type { ReactNode } from 'react'
import type { FigureSource } from '../../../../main/domain/cure/index.ts'
import { say, word } from '../../../../main/domain/language/index.ts'
import styles from './Products.module.css'

const sources = [word('data sheet'), word('common practice')]

word('data sheet only')

interface Props {
  label: string
  about?: string
  /** The figure's source and how it is changed; text where it can only have one. */
  source: FigureSource | 'data sheet only' | null
  onSource?: (source: FigureSource) => void
  children: ReactNode
}

/** One figure of a profile: what it is, its value, and where the value comes from. */
export function FigureRow({ label, about, source, onSource, children }: Props) {
  return (
    <div className={styles.figure} data-sheet={source === 'data sheet'}>
      <div>
        {label}
        {about && <small>{about}</small>}
      </div>
      <div className={styles.values}>{children}</div>
      {onSource && source !== null && source !== 'data sheet only' ? (
        <NativeSelect
          aria-label={say('Source of: {label}', { label })}
          className={styles.source}
          data={sources.map(value => ({ value, label: say(value) }))}
          value={source}
          onChange={event => onSource(event.currentTarget.value as FigureSource)}
        />
      ) : (
        <span className={styles.fixedSource}>{source && say(source)}</span>
      )}
    </div>
  )
}
