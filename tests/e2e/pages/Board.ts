import { expect, type Locator, type Page } from '@playwright/test'

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
    await this.settled()
  }

  later(): Promise<void> {
    return this.#page.getByRole('button', { name: 'Later' }).click()
  }

  /**
   * Waits until the days it shows are those asked for last, with everything that stands in them: the stays are drawn a
   * moment after the drawing, which has to know its width first.
   */
  async settled(): Promise<void> {
    await expect(this.#page.locator('[aria-busy="false"]').filter({ has: this.drawing })).toBeVisible()
    await expect(this.stays.first().or(this.#page.getByText('Nothing stands here'))).toBeAttached()
  }

  /** Goes on week by week, from the one shown, until a car is on it. */
  async find(plate: string): Promise<Locator> {
    await this.show('Week')
    for (let week = 0; week < 6; week++) {
      await this.settled()
      if ((await this.staysOf(plate).count()) > 0) break
      await this.later()
    }
    await expect(this.staysOf(plate).first()).toBeVisible()
    return this.staysOf(plate).first()
  }
}
