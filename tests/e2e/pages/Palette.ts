import type { Locator, Page } from '@playwright/test'

/** What Ctrl K opens. */
export class Palette {
  readonly page: Page
  readonly dialog: Locator
  readonly search: Locator

  constructor(page: Page) {
    this.page = page
    this.dialog = page.getByRole('dialog', { name: 'Find' })
    this.search = this.dialog.getByRole('textbox')
  }

  async open(): Promise<void> {
    await this.page.getByRole('button', { name: 'Find' }).waitFor()
    await this.page.keyboard.press('Control+k')
    await this.search.waitFor()
  }

  result(words: string | RegExp): Locator {
    return this.dialog.getByRole('button').filter({ hasText: words }).first()
  }
}
