import { useEffect, useEffectEvent } from 'react'
import { isTaken } from './jumpKeys.ts'
import { keySaid } from './keySaid.ts'

/** What a screen does at a key, by the key as the screen names it. */
export type ScreenKeys = Readonly<Record<string, () => void>>

/** Listens for the keys of a screen while it is shown, everywhere but in text and dialogs. */
export function useScreenKeys(keys: ScreenKeys): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    const said = keySaid(event)
    const run = said !== null && Object.hasOwn(keys, said) ? keys[said] : undefined
    if (!run || isTaken(event.target)) return
    event.preventDefault()
    run()
  })
  useEffect(() => {
    const listener = (event: KeyboardEvent) => press(event)
    window.addEventListener('keydown', listener)
    return () => window.removeEventListener('keydown', listener)
  }, [])
}
