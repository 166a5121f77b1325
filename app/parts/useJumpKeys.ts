import { useEffect, useState } from 'react'
import type { CommandContext } from './commands.ts'
import { isTaken, keyMeaning, type Pending, pairMs } from './jumpKeys.ts'

/**
 * Listens for the keys of the commands everywhere but in text and dialogs. Answers with the first key of a pair while its
 * second is waited for.
 */
export function useJumpKeys(context: CommandContext): string | null {
  const [waiting, setWaiting] = useState<string | null>(null)
  useEffect(() => {
    let pending: Pending | null = null
    let timer: ReturnType<typeof setTimeout> | undefined
    const wait = (next: Pending | null) => {
      pending = next
      setWaiting(next?.key ?? null)
      clearTimeout(timer)
      if (next) timer = setTimeout(() => wait(null), pairMs)
    }
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTaken(event.target)) return
      const meaning = keyMeaning(event.key, pending, event.timeStamp)
      const secondOfPair = pending !== null
      wait(meaning && 'first' in meaning ? { key: event.key.toLowerCase(), at: event.timeStamp } : null)
      if (meaning && 'command' in meaning) meaning.command.run(context)
      // The second key is the pair's, not the screen's.
      if (meaning || secondOfPair) {
        event.preventDefault()
        event.stopImmediatePropagation()
      }
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => {
      clearTimeout(timer)
      window.removeEventListener('keydown', press, { capture: true })
    }
  }, [context])
  return waiting
}
