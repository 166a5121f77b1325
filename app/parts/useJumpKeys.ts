import { useEffect, useEffectEvent, useRef, useState } from 'react'
import type { CommandContext } from './commands.ts'
import { isTaken, keyMeaning, type Pending, pairMs } from './jumpKeys.ts'
import { keySaid } from './keySaid.ts'

/**
 * Listens for the keys of the commands everywhere but in text and dialogs. Answers with the first key of a pair while its
 * second is waited for.
 */
export function useJumpKeys(context: CommandContext): string | null {
  const [waiting, setWaiting] = useState<string | null>(null)
  const pending = useRef<Pending | null>(null)
  useEffect(() => {
    if (waiting === null) return
    const timer = setTimeout(() => setWaiting(null), pairMs)
    return () => clearTimeout(timer)
  }, [waiting])
  const press = useEffectEvent((event: KeyboardEvent) => {
    const key = keySaid(event)
    // The modifier that makes a capital or a question mark comes as a key of its own.
    if (key === null || key === 'Shift' || isTaken(event.target)) return
    const before = pending.current
    const meaning = keyMeaning(key, before, event.timeStamp)
    const first = meaning !== null && 'first' in meaning
    pending.current = first ? { key, at: event.timeStamp } : null
    setWaiting(pending.current?.key ?? null)
    if (meaning && 'command' in meaning) meaning.command.run(context)
    const ofPair = before !== null && event.timeStamp - before.at <= pairMs
    // The second key is the pair's, not the screen's.
    if (meaning || ofPair) {
      event.preventDefault()
      event.stopImmediatePropagation()
    }
  })
  useEffect(() => {
    const listener = (event: KeyboardEvent) => press(event)
    window.addEventListener('keydown', listener, { capture: true })
    return () => window.removeEventListener('keydown', listener, { capture: true })
  }, [])
  return waiting
}
