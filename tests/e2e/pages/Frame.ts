import type { Locator, Page } from '@playwright/test'

/** The bar above every screen. */
export class Frame {
  readonly page: Page
  readonly bar: Locator
  readonly screen: Locator

  constructor(page: Page) {
    this.page = page
    this.bar = page.getByRole('navigation', { name: 'Screens' })
    this.screen = page.getByRole('main')
  }

  /** Goes to a screen by its name in the bar. */
  async goTo(name: string): Promise<void> {
    await this.bar.getByRole('link', { name }).click()
  }
}
