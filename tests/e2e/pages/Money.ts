import { expect, type Locator, type Page } from '@playwright/test'

/** Quotes, the bill of a visit, and what is paid of it. */
export class Money {
  readonly #page: Page

  constructor(page: Page) {
    this.#page = page
  }

  get quoteForm(): Locator {
    return this.#page.getByRole('form', { name: 'New quote' })
  }

  /** One way of the quote, as it is laid beside the others. */
  variant(name: string): Locator {
    return this.#page.getByRole('region', { name, exact: true })
  }

  /** Chooses the treatments of a variant that is still being written. */
  async sell(variant: number, treatments: string[]): Promise<void> {
    const box = this.quoteForm.getByLabel(`Treatments of variant ${variant}`, { exact: true }).first()
    // What is chosen lies over the box itself.
    await box.click({ force: true })
    for (const name of treatments) await this.#page.getByRole('option', { name, exact: true }).click()
    await this.#page.keyboard.press('Escape')
  }

  /** Draws something like a name and accepts. */
  async sign(): Promise<void> {
    const box = this.#page.getByRole('img', { name: 'Signature: sign here' })
    await box.scrollIntoViewIfNeeded()
    const { x, y, width, height } = (await box.boundingBox())!
    await this.#page.mouse.move(x + width * 0.1, y + height * 0.6)
    await this.#page.mouse.down()
    for (let i = 1; i <= 8; i++)
      await this.#page.mouse.move(x + width * (0.1 + 0.08 * i), y + height * (i % 2 ? 0.25 : 0.75), {
        steps: 2,
      })
    await this.#page.mouse.up()
    await this.#page.getByRole('button', { name: 'Accept it' }).click()
  }

  /** Takes a payment, of the amount proposed where none is given. */
  async pay(amount?: string): Promise<void> {
    const form = this.#page.getByRole('form', { name: 'Payment' })
    if (amount !== undefined) {
      await form.getByLabel('Paid', { exact: true }).fill(amount)
      await form.getByLabel('Note').click()
    }
    const take = form.getByRole('button', { name: /^Take / })
    const before = await take.textContent()
    await take.click()
    await expect(this.#page.getByRole('button', { name: before!, exact: true })).toHaveCount(0)
  }
}
