import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { dateText, wallWords } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { readPast } from '../../parts/pastText.ts'

/** When the next thing on this job happened: now, unless a time is typed. */
export interface Happened {
  text: string
  change(text: string): void
  error: string | undefined
  /** The minute typed; undefined for now, and for what is no time. */
  at: number | undefined
  /** Does the act with the typed time, or with none for now; where the text is no time, says so instead. */
  take(act: (time: { at?: number }) => void): void
  /** Back to now: a time is used once. */
  clear(): void
}

export function useHappened({ nowAt, zone }: JobView): Happened {
  const [text, setText] = useState('')
  const [tried, setTried] = useState(false)
  const at = text.trim() === '' ? undefined : readPast(text, nowAt, zone)
  return {
    text,
    change: next => {
      setText(next)
      setTried(false)
    },
    error:
      tried && at === null
        ? say('Write a time such as {time}, yesterday {earlier} or {date} {earlier}.', {
            time: wallWords(640),
            earlier: wallWords(1050),
            date: dateText('2026-04-14'),
          })
        : undefined,
    at: at ?? undefined,
    take: act => {
      setTried(true)
      if (at === undefined) act({})
      else if (at !== null) act({ at })
    },
    clear: () => {
      setText('')
      setTried(false)
    },
  }
}
