import { useEffect } from 'react'

/** Closes what lies on top of everything else; null: nothing does. */
let closeTop: (() => void) | null = null

// Of the window and there before any dialog is: a dialog listens there too, wherever the focus is, and would close itself.
addEventListener(
  'keydown',
  event => {
    if (event.key !== 'Escape' || event.isComposing || !closeTop) return
    event.stopImmediatePropagation()
    closeTop()
  },
  { capture: true },
)

/** As long as something is open, Escape closes it alone, not the dialog under it. */
export function useEscapeFirst(opened: boolean, close: () => void): void {
  useEffect(() => {
    if (!opened) return
    closeTop = close
    return () => {
      closeTop = null
    }
  })
}
