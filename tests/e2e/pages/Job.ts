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

  /** The next act happened earlier. */
  async earlier(time: string): Promise<void> {
    const open = this.#page.getByRole('button', { name: 'It happened earlier…' })
    if (await open.isVisible()) await open.click()
    await this.#page.getByLabel('It happened at').fill(time)
  }

  /** The step whose start is the next act now; null where none is. */
  async startable(): Promise<string | null> {
    const start = this.#page.getByRole('button', { name: /^Start /, disabled: false })
    return (await start.isVisible()) ? (await start.textContent())!.replace('Start ', '') : null
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
