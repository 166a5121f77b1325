import type { Page } from '@playwright/test'

/** The words of the buttons of a screen that are filled, the mark of the one next act; what cannot be pressed now is not, nor are the parts of a picture. */
export async function filledActs(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const probe = document.createElement('i')
    probe.style.color = 'var(--work)'
    document.body.append(probe)
    const work = getComputedStyle(probe).color
    probe.remove()
    return [
      ...document.querySelectorAll<HTMLElement>('main :is(.mantine-Button-root, .mantine-ActionIcon-root)'),
    ]
      .filter(
        each =>
          !each.matches(':disabled') &&
          each.checkVisibility() &&
          getComputedStyle(each).backgroundColor === work,
      )
      .map(each => each.textContent.trim())
  })
}
