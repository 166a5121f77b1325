import type { Locator, Page } from '@playwright/test'

/** The end of the day: what was used, the shelf, the orders. */
export class CloseOfDay {
  readonly used: Locator
  readonly shelf: Locator
  readonly orders: Locator

  readonly #page: Page

  constructor(page: Page) {
    this.#page = page
    this.used = page.getByRole('region', { name: /Confirm usage/ })
    this.shelf = page.getByRole('region', { name: /The shelf/ })
    this.orders = page.getByRole('region', { name: /^Orders/ })
  }

  /** One finished step's form. */
  step(name: string): Locator {
    return this.used.getByRole('form', { name: new RegExp(`^What ${name} of`) })
  }

  confirm(name: string): Locator {
    return this.used.getByRole('button', { name: new RegExp(`^Confirm ${name} of`) })
  }

  /** Confirms all that used what its recipe says. */
  get asPlanned(): Locator {
    return this.used.getByRole('button', { name: /^Confirm .* as planned$/ })
  }

  /** Opens the steps that used a product. */
  correct(product: string): Locator {
    return this.used.getByRole('button', { name: `Correct what was used of ${product}` })
  }

  count(product: string): Locator {
    return this.shelf.getByRole('button', { name: `Count ${product}` })
  }

  counting(product: string): Locator {
    return this.shelf.getByRole('form', { name: `Count ${product}` })
  }

  /** A draft to one supplier. */
  draft(supplier: string): Locator {
    return this.orders.getByRole('form', { name: new RegExp(`^Order \\d+ to ${supplier}`) })
  }

  send(supplier: string): Locator {
    return this.orders.getByRole('button', { name: new RegExp(`^Send order \\d+ to ${supplier}`) })
  }

  /**
   * Plays a scanner: keys 5 ms apart, Enter at the end, wherever the focus is. They bring their times with them, since the
   * test's clock stamps a key when it is dealt with, which on a busy machine is late.
   */
  async scan(code: string): Promise<void> {
    await this.#page.evaluate(() => {
      const struck = new WeakMap<Event, number>()
      let lastMs = performance.now()
      Object.defineProperty(KeyboardEvent.prototype, 'timeStamp', {
        configurable: true,
        get(this: KeyboardEvent) {
          if (!struck.has(this)) {
            lastMs += 5
            struck.set(this, lastMs)
          }
          return struck.get(this)
        },
      })
    })
    await this.#page.keyboard.type(`${code}\n`)
    await this.#page.evaluate(() => {
      Reflect.deleteProperty(KeyboardEvent.prototype, 'timeStamp')
    })
  }
}
