import type { Page } from '@playwright/test'

/**
 * The controls that lie under something else once they are gone to with the keyboard: a bar that sticks to the top, a
 * form's foot that sticks to the bottom (WCAG 2.2, 2.4.11: what has the focus is not hidden). What a dialog covers on
 * purpose is left out, and so is what is not on the page to be seen.
 */
export async function coveredControls(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const covered: string[] = []
    for (const control of document.querySelectorAll<HTMLElement>(
      'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), a[href], summary',
    )) {
      if (!control.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
      const { width, height } = control.getBoundingClientRect()
      if (width <= 1.5 || height <= 1.5) continue
      control.focus()
      if (document.activeElement !== control) continue
      const box = control.getBoundingClientRect()
      // Its upper part and its lower part: half a field is no field. What is taller than the window has a part in sight.
      const ys = [box.top + Math.min(4, box.height / 2), box.bottom - Math.min(4, box.height / 2)]
      const x = Math.min(Math.max(box.left + box.width / 2, 1), innerWidth - 2)
      const seen = ys.map(y => {
        const top = document.elementFromPoint(x, y)
        return (
          top !== null &&
          (control.contains(top) ||
            top.contains(control) ||
            top.closest('label')?.contains(control) === true ||
            [...((control as HTMLInputElement).labels ?? [])].some(label => label.contains(top)))
        )
      })
      const fits = box.height < innerHeight / 2
      if (fits ? seen.includes(false) : !seen.includes(true))
        covered.push(
          (control.getAttribute('aria-label') ?? control.textContent?.trim() ?? '').slice(0, 60) ||
            control.getAttribute('name') ||
            control.id,
        )
    }
    return covered
  })
}
