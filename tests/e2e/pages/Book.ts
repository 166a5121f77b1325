import type { Locator, Page } from '@playwright/test'

export interface Caller {
  name: string
  phone: string
  plate: string
}

/** The front desk: who, what, and the offers as lanes. */
export class Book {
  readonly #page: Page
  readonly hold: Locator
  readonly confirm: Locator
  readonly offers: Locator

  constructor(page: Page) {
    this.#page = page
    this.hold = page.getByRole('button', { name: /^Hold / })
    this.confirm = page.getByRole('button', { name: 'Confirm the booking', exact: true })
    this.offers = page.getByRole('group', { name: 'Offers' }).getByRole('radio')
  }

  async newCaller({ name, phone, plate }: Caller): Promise<void> {
    await this.#page.getByRole('button', { name: /^New customer/ }).click()
    await this.#page.getByLabel('New customer’s name').fill(name)
    await this.#page.getByLabel('Phone', { exact: true }).fill(phone)
    await this.#page.getByLabel('Plate', { exact: true }).fill(plate)
  }

  treatment(name: string): Locator {
    return this.#page.getByRole('checkbox', { name })
  }

  offer(title: RegExp): Locator {
    return this.#page.getByRole('radio', { name: title })
  }
}
