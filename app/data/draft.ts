import { useState } from 'react'

export interface Draft<T> {
  value: T
  change(part: Partial<T>): void
  dirty: boolean
  /** The save this form was filled from: what goes with the next one, so that a newer save is never overwritten. */
  version: number
  /** Another window has saved since this form was filled. */
  outdated: boolean
  /** Drops what was typed here and shows what is saved. */
  reload(): void
  /** Takes what was typed as saved, until the list brings the saved row. */
  settle(): void
}

/**
 * What a form holds while it is edited. As long as nothing was typed it follows what is saved; once something was, a save
 * from another window leaves it alone and is told as `outdated`. `version` counts the saves of the row.
 */
export function useDraft<T extends object>(saved: T, version: number): Draft<T> {
  const [base, setBase] = useState({ saved, version })
  const [value, setValue] = useState(saved)
  const [settled, setSettled] = useState(false)
  const dirty = JSON.stringify(value) !== JSON.stringify(base.saved)
  const moved = version !== base.version
  const load = () => {
    setBase({ saved, version })
    setValue(saved)
    setSettled(false)
  }
  // During rendering, as React advises for state that follows a prop: the form never shows an older row.
  if (moved && (!dirty || settled)) load()
  return {
    value,
    change: part => {
      setValue(now => ({ ...now, ...part }))
      setSettled(false)
    },
    dirty: dirty && !settled,
    version: base.version,
    outdated: moved && dirty && !settled,
    reload: load,
    settle: () => setSettled(true),
  }
}
