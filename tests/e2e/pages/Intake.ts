import type { Page } from '@playwright/test'

/** The intake of a visit. */
export class Intake {
  private readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  get form() {
    return this.page.getByRole('form', { name: 'Intake' })
  }

  get marks() {
    return this.page.getByRole('list', { name: 'Marks' }).getByRole('listitem')
  }

  get summary() {
    return this.page.getByRole('table').filter({ hasText: 'Thinnest' })
  }

  panel(name: string) {
    return this.page.getByRole('button', { name: new RegExp(`^${name}, .*: mark`) })
  }

  chip(name: string) {
    return this.page.getByRole('radio', { name, exact: true })
  }

  /** Types a thickness on the pad, key by key. */
  async measure(um: string): Promise<void> {
    const pad = this.page.getByRole('group', { name: 'Number pad' })
    for (const key of um) await pad.getByRole('button', { name: key, exact: true }).tap()
    await pad.getByRole('button', { name: 'Keep, next spot' }).tap()
  }

  /** Writes something like a name into the box, with the finger. */
  async sign(): Promise<void> {
    const box = this.page.getByRole('img', { name: 'Signature of the owner: sign here' })
    await box.scrollIntoViewIfNeeded()
    const { x, y, width, height } = (await box.boundingBox())!
    await this.page.mouse.move(x + width * 0.1, y + height * 0.6)
    await this.page.mouse.down()
    for (let i = 1; i <= 12; i++)
      await this.page.mouse.move(x + width * (0.1 + 0.06 * i), y + height * (i % 2 ? 0.25 : 0.75), {
        steps: 3,
      })
    await this.page.mouse.up()
  }
}
