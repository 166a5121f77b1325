import { useLayoutEffect, useRef } from 'react'
import type { IntakeDraft } from '../../../main/api/views.ts'
import type { FormOf } from '../../data/form.ts'

/**
 * Keeps what is typed of an intake through a reload of the page: in this tab's own storage, with the save it was typed on,
 * and only until it is saved. A save from elsewhere since then makes it void.
 */
export function useKeptDraft(
  jobId: string,
  form: FormOf<{ draft: IntakeDraft; ownerName: string; signature: string }>,
): void {
  const key = `lustrum-intake-${jobId}`
  const { change, dirty, version } = form
  const { draft } = form.value
  const begun = useRef(false)
  // Before it is painted: what can be seen is kept, whenever the page is loaded anew.
  useLayoutEffect(() => {
    if (!begun.current) {
      begun.current = true
      const kept = read(key)
      if (kept && kept.version === version) return change({ draft: kept.draft })
      sessionStorage.removeItem(key)
      return
    }
    if (!dirty) sessionStorage.removeItem(key)
    else {
      try {
        sessionStorage.setItem(key, JSON.stringify({ version, draft }))
      } catch {
        // Full or shut off: then a reload asks, as on every other form.
      }
    }
  }, [key, draft, dirty, version, change])
}

function read(key: string): { version: number; draft: IntakeDraft } | null {
  try {
    return JSON.parse(sessionStorage.getItem(key) ?? 'null')
  } catch {
    return null
  }
}
