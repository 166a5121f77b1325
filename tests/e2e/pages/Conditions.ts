import type { Locator, Page } from '@playwright/test'

/** The weather in the bays. */
export class Conditions {
  readonly page: Page
  readonly keep: Locator
  readonly file: Locator
  readonly report: Locator

  constructor(page: Page) {
    this.page = page
    this.keep = page.getByRole('button', { name: 'Save the reading' })
    this.file = page.getByLabel('File of readings')
    this.report = page.getByRole('status').filter({ hasText: 'rows kept' })
  }

  bay(name: string): Locator {
    return this.page
      .getByRole('region', { name: 'Bays now' })
      .getByRole('button', { name: new RegExp(`^${name}`) })
  }

  reading(bay: string): Locator {
    return this.page.getByRole('form', { name: `Reading of ${bay}` })
  }

  async take(bay: string, text: string): Promise<void> {
    await this.bay(bay).click()
    await this.file.setInputFiles({ name: 'logger.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
    await this.page.getByRole('button', { name: `Read it in for ${bay}` }).click()
    await this.report.waitFor()
  }
}
