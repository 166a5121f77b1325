import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** Waits until the fonts are there and nothing fades any more: a colour measured halfway is no screen's colour. */
async function settle(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready
    const ending = document
      .getAnimations()
      .filter(each => Number.isFinite(each.effect?.getComputedTiming().endTime))
    await Promise.allSettled(ending.map(each => each.finished))
  })
}

/** No violation that axe calls serious or critical, on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  await settle(page)
  // "Legacy" judges in the page itself, where the other way opens a second page each time: there are no frames to reach.
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] })
  const { violations } = await axe.analyze()
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
  const told = grave.map(({ id, help, nodes }) => ({
    id,
    help,
    at: nodes.map(node => node.target.join(' ')),
  }))
  expect(told, 'accessibility').toEqual([])
}
