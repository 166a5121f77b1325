import { useEffect, useRef } from 'react'

type Taker = (code: string) => void

/** The screens that want scans, the one opened last at the end. */
const takers: Taker[] = []

/** While the screen is open, scans are its own. */
export function useScans(take: Taker): void {
  const latest = useRef(take)
  useEffect(() => {
    latest.current = take
  }, [take])
  useEffect(() => {
    const own: Taker = code => latest.current(code)
    takers.push(own)
    return () => {
      takers.splice(takers.indexOf(own), 1)
    }
  }, [])
}

/** Hands a code to the screen that wants it; false where none does. */
export function handOver(code: string): boolean {
  const taker = takers.at(-1)
  taker?.(code)
  return taker !== undefined
}
