import { expect, type Locator, type Page } from '@playwright/test'

/** Clicks a link that another program takes, and sees the page still there, not loaded anew. */
export async function staysHere(desk: Page, link: Locator): Promise<void> {
  const here = desk.url()
  await desk.evaluate(() => document.body.setAttribute('data-before', 'yes'))
  await link.click()
  await expect(desk.locator('body[data-before="yes"]')).toHaveCount(1)
  expect(desk.url()).toBe(here)
}
