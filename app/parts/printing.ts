import { useSyncExternalStore } from 'react'

let printing = false
let shownIn: string | undefined
const told = new Set<() => void>()

function turn(on: boolean): void {
  if (on === printing) return
  printing = on
  const { dataset } = document.documentElement
  if (on) shownIn = dataset.mantineColorScheme
  dataset.mantineColorScheme = on ? 'light' : shownIn
  for (const tell of told) tell()
}

/** Paper is white in the dark too: while the window is printed it has the light colours, however it is shown. */
export function listenForPrinting(): void {
  addEventListener('beforeprint', () => turn(true))
  addEventListener('afterprint', () => turn(false))
}

function hear(tell: () => void): () => void {
  told.add(tell)
  return () => told.delete(tell)
}

/** Whether the window is being laid out for paper: for what is drawn in pixels, which no style sheet can widen. */
export function usePrinting(): boolean {
  return useSyncExternalStore(hear, () => printing)
}
