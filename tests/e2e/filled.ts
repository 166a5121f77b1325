import type { Page } from '@playwright/test'

/** The words of the buttons of a screen that are filled, the mark of the one next act; what cannot be pressed now is not. */
export async function filledActs(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const probe = document.createElement('i')
    probe.style.color = 'var(--work)'
    document.body.append(probe)
    const work = getComputedStyle(probe).color
    probe.remove()
    return [...document.querySelectorAll<HTMLElement>('main button:enabled, main a[href]')]
      .filter(each => each.checkVisibility() && getComputedStyle(each).backgroundColor === work)
      .map(each => each.textContent.trim())
  })
}
