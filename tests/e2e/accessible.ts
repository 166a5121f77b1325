import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** What axe says of a page, as far as it is read here. */
interface Judged {
  violations: readonly {
    id: string
    help: string
    impact?: string | null
    nodes: readonly { target: readonly unknown[]; any: readonly { message: string }[] }[]
  }[]
}

/** The rules of axe that ask for colours; every other verdict is the same in light and in dark. */
export const colourRules = ['color-contrast', 'link-in-text-block']

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

/** Gives the computer other colours; the page follows in a moment of its own, in which it would show some of both. */
export async function inColours(page: Page, scheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme: scheme })
  await expect(page.locator('html')).toHaveAttribute('data-mantine-color-scheme', scheme)
}

/** Judges once in a page that has no axe yet; it stays there until the page is loaded anew. */
async function bringAxe(page: Page): Promise<void> {
  if (await page.evaluate(() => 'axe' in window)) return
  // "Legacy" judges in the page itself, where the other way opens a second page each time: there are no frames to reach.
  await new AxeBuilder({ page }).setLegacyMode().withRules(['html-has-lang']).analyze()
}

/** What axe calls serious or critical on the page as it stands, by all its rules or by those named. */
export async function axeFaults(page: Page, rules?: readonly string[]) {
  await settle(page)
  await bringAxe(page)
  const { violations } = await page.evaluate(
    ([rules]) => {
      const { axe } = window as unknown as { axe: { run(on: Document, how: object): Promise<Judged> } }
      return axe.run(document, {
        resultTypes: ['violations'],
        // Nothing here plays, and what a sheet says is read off the page: without this each sheet is fetched again.
        preload: false,
        ...(rules && { runOnly: rules }),
      })
    },
    [rules] as const,
  )
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, help, nodes }) => ({
      id,
      help,
      at: nodes.map(({ target, any }) => [target.join(' '), ...any.map(({ message }) => message)].join(': ')),
    }))
}

/** No violation that axe calls serious or critical, on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  expect(await axeFaults(page), 'accessibility').toEqual([])
}
