import { useEffect, useRef } from 'react'
import { type Burst, burstMs, hearKey, heldFrom } from './wedge.ts'

type Field = HTMLInputElement | HTMLTextAreaElement

/**
 * Hears a scanner anywhere in the window, in dialogs and fields too. The code never lands in a field: from its third key on
 * it is held back, and the first two are taken out again. A hand that was merely quick gets its keys typed a moment later.
 */
export function useScanner(onCode: (code: string) => void): void {
  const heard = useRef(onCode)
  useEffect(() => {
    heard.current = onCode
  }, [onCode])
  useEffect(() => {
    let burst: Burst | null = null
    let field: { element: Field; value: string } | null = null
    let held = ''
    let timer: ReturnType<typeof setTimeout> | undefined
    const giveBack = () => {
      clearTimeout(timer)
      if (held && field && document.activeElement === field.element)
        // Types as a hand does: the field's own rules and its undo apply.
        document.execCommand('insertText', false, held)
      held = ''
    }
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey) return
      const result = hearKey(burst, event.key, event.timeStamp)
      const begins = result?.burst && (burst === null || result.burst.text.length === 1)
      burst = result?.burst ?? null
      if (result?.code) {
        swallow(event)
        clearTimeout(timer)
        held = ''
        if (field) restore(field.element, field.value)
        heard.current(result.code)
        return
      }
      if (begins || burst === null) giveBack()
      if (begins) field = isField(event.target) ? { element: event.target, value: event.target.value } : null
      if (burst === null || event.key.length > 1) return
      if (burst.text.length < heldFrom) return
      swallow(event)
      if (!field) return
      held += event.key
      clearTimeout(timer)
      timer = setTimeout(giveBack, 2 * burstMs)
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => {
      clearTimeout(timer)
      window.removeEventListener('keydown', press, { capture: true })
    }
  }, [])
}

function swallow(event: KeyboardEvent): void {
  event.preventDefault()
  event.stopImmediatePropagation()
}

function isField(target: EventTarget | null): target is Field {
  return target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement
}

/** Gives a field its text back in a way that React hears of. */
function restore(element: Field, value: string): void {
  if (element.value === value) return
  const prototype =
    element instanceof HTMLTextAreaElement ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(element, value)
  element.dispatchEvent(new Event('input', { bubbles: true }))
}
