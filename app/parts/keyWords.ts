import { useEffect, useSyncExternalStore } from 'react'

/** A key of a screen and what it does, in words. */
export interface KeyWords {
  keys: string
  label: string
}

interface KeyGroup {
  title: string
  list: readonly KeyWords[]
}

let groups: readonly KeyGroup[] = []
const listeners = new Set<() => void>()

function set(next: readonly KeyGroup[]): void {
  groups = next
  for (const listener of listeners) listener()
}

/** Puts a screen's keys into the keyboard help for as long as it is shown. `list` must stay the same array. */
export function useKeyWords(title: string, list: readonly KeyWords[]): void {
  useEffect(() => {
    const group = { title, list }
    set([...groups, group])
    return () => set(groups.filter(each => each !== group))
  }, [title, list])
}

/** The keys of the screens now shown. */
export function useShownKeys(): readonly KeyGroup[] {
  return useSyncExternalStore(
    listener => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => groups,
  )
}
