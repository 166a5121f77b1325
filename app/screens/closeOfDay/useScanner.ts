import { useEffect, useRef } from 'react'
import { type Burst, hearKey } from './wedge.ts'

type Typed = HTMLInputElement | HTMLTextAreaElement

/**
 * Hears a scanner anywhere on the screen, in dialogs and fields too. What the scanner typed into a field before its
 * Enter told it from a person is taken out again, and the Enter does nothing else.
 */
export function useScanner(onCode: (code: string) => void): void {
  const heard = useRef(onCode)
  useEffect(() => {
    heard.current = onCode
  }, [onCode])
  useEffect(() => {
    let burst: Burst | null = null
    let field: { element: Typed; value: string } | null = null
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey) return
      const result = hearKey(burst, event.key, event.timeStamp)
      const begins = result?.burst && (burst === null || result.burst.text.length === 1)
      burst = result?.burst ?? null
      if (begins) field = isTyped(event.target) ? { element: event.target, value: event.target.value } : null
      if (!result?.code) {
        // Past its second key a burst is no hand's: outside of fields it must not press the screen's own keys.
        if (burst && burst.text.length > 1 && !field) {
          event.preventDefault()
          event.stopImmediatePropagation()
        }
        return
      }
      event.preventDefault()
      event.stopImmediatePropagation()
      if (field) restore(field.element, field.value)
      heard.current(result.code)
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => window.removeEventListener('keydown', press, { capture: true })
  }, [])
}

function isTyped(target: EventTarget | null): target is Typed {
  return target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement
}

/** Gives a field its text back in a way that React hears of. */
function restore(element: Typed, value: string): void {
  const prototype =
    element instanceof HTMLTextAreaElement ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(element, value)
  element.dispatchEvent(new Event('input', { bubbles: true }))
}
