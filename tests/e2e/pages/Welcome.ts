import type { Locator, Page } from '@playwright/test'

/** The first run. */
export class Welcome {
  readonly page: Page
  readonly name: Locator
  readonly zone: Locator
  readonly country: Locator
  readonly money: Locator
  readonly open: Locator
  readonly openDemo: Locator

  constructor(page: Page) {
    this.page = page
    this.name = page.getByRole('textbox', { name: 'Name of the shop' })
    this.zone = page.getByRole('combobox', { name: 'Time zone' })
    this.country = page.getByRole('combobox', { name: 'Country' })
    this.money = page.getByRole('combobox', { name: 'Money' })
    this.open = page.getByRole('button', { name: 'Open the shop' })
    this.openDemo = page.getByRole('button', { name: 'Open the demo shop' })
  }

  crewName(place: number): Locator {
    return this.page.getByRole('textbox', { name: `Name of crew member ${place}` })
  }

  opens(day: string): Locator {
    return this.page.getByRole('textbox', { name: `${day} opens`, exact: true })
  }

  closes(day: string): Locator {
    return this.page.getByRole('textbox', { name: `${day} closes`, exact: true })
  }
}
