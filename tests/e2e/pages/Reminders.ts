import type { Locator, Page } from '@playwright/test'

/** The morning's messages: the list, and the one that is open. */
export class Reminders {
  readonly #page: Page
  readonly list: Locator
  readonly write: Locator
  readonly send: Locator
  /** What was done last, in words. */
  readonly said: Locator

  constructor(page: Page) {
    this.#page = page
    this.list = page.getByRole('list', { name: 'Messages' })
    this.write = page.getByRole('button', { name: /^Write today’s reminders/ })
    this.send = page.getByRole('button', { name: /^Send what is approved/ })
    this.said = page.getByRole('status', { name: 'Last act' })
  }

  row(plate: string): Locator {
    return this.list.getByRole('link', { name: new RegExp(`^${plate}`) })
  }

  /** The message to an owner, once it is open. */
  message(owner: string): Locator {
    return this.#page.getByRole('region', { name: `Message to ${owner}` })
  }

  async open(plate: string, owner: string): Promise<Locator> {
    await this.row(plate).click()
    await this.message(owner).waitFor()
    return this.message(owner)
  }
}
