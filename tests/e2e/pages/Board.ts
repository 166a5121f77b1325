import type { Locator, Page } from '@playwright/test'

/** The bay calendar. */
export class Board {
  readonly #page: Page
  readonly drawing: Locator
  readonly stays: Locator
  /** What the present move would do, or why it is refused. */
  readonly status: Locator

  constructor(page: Page) {
    this.#page = page
    this.drawing = page.getByRole('group', { name: /Bay board/ })
    this.stays = this.drawing.getByRole('button')
    this.status = page.getByTestId('board-status')
  }

  staysOf(plate: string): Locator {
    return this.drawing.getByRole('button', { name: new RegExp(`^${plate},`) })
  }

  async show(days: 'Day' | 'Three days' | 'Week'): Promise<void> {
    await this.#page.getByRole('radiogroup', { name: 'Days shown' }).getByText(days, { exact: true }).click()
  }

  later(): Promise<void> {
    return this.#page.getByRole('button', { name: 'Later' }).click()
  }
}
