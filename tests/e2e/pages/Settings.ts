import type { Locator, Page } from '@playwright/test'

export const sections = [
  'Shop',
  'Hours',
  'Bays',
  'Crew',
  'Treatments',
  'Products',
  'Backups',
  'Diagnostics',
] as const

/** The settings: sections on the left, in most a list, and the editor of the chosen row. */
export class Settings {
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  async show(section: (typeof sections)[number]): Promise<void> {
    const nav = this.page.getByRole('navigation', { name: 'Settings' })
    await nav.getByRole('link', { name: section, exact: true }).click()
    await this.page.getByRole('heading', { level: 2, name: section }).waitFor()
  }

  row(name: string): Locator {
    return this.page
      .getByRole('list', { name: /^Every/ })
      .getByRole('link')
      .filter({ hasText: name })
      .first()
  }

  /** Chooses a row and waits for its form. */
  async choose(name: string): Promise<Locator> {
    await this.row(name).click()
    const form = this.page.getByRole('form', { name, exact: true })
    await form.waitFor()
    return form
  }

  save(form: Locator): Locator {
    return form.getByRole('button', { name: 'Save' })
  }
}
