import { expect, type Locator, type Page } from '@playwright/test'

/** One car's visit and its steps. */
export class Job {
  readonly #page: Page

  constructor(page: Page) {
    this.#page = page
  }

  finish(step: string): Locator {
    return this.#page.getByRole('button', { name: `Finish ${step}` })
  }

  /** Starts a step, though another car may still have the bay or the person it wants. */
  async startAnyway(step: string): Promise<void> {
    const anyway = this.#page.getByRole('button', { name: 'Do it anyway' })
    await this.#page.getByRole('button', { name: `Start ${step}` }).click()
    await expect(this.finish(step).or(anyway)).toBeVisible()
    if (await anyway.isVisible()) await anyway.click()
    await expect(this.finish(step)).toBeVisible()
  }
}
