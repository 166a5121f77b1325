import type { Locator, Page } from '@playwright/test'

/** Copies: how they stand, where they go, and the way back from one, in the settings and on the first screen. */
export class Backups {
  readonly line: Locator
  readonly place: Locator
  readonly save: Locator
  readonly make: Locator
  readonly warnings: Locator
  readonly offer: Locator
  readonly whereFrom: Locator
  readonly lookThere: Locator
  readonly newest: Locator
  readonly seeWhatItHolds: Locator
  readonly restore: Locator
  readonly ready: Locator

  constructor(page: Page) {
    const form = page.getByRole('form', { name: 'Where copies go' })
    this.line = page.getByRole('region', { name: 'How the copies stand' }).getByRole('status')
    this.place = form.getByRole('textbox', { name: 'Second place' })
    this.save = form.getByRole('button', { name: 'Save' })
    this.make = page.getByRole('button', { name: 'Make a copy now' })
    this.warnings = page.getByRole('list', { name: 'The shop’s data' })
    this.offer = page.getByText('Restore it from a copy')
    this.whereFrom = page.getByRole('textbox', { name: 'Where are the copies?' })
    this.lookThere = page.getByRole('button', { name: 'Look there' })
    this.newest = page.getByRole('radiogroup', { name: 'Copies found there' }).getByRole('radio').first()
    this.seeWhatItHolds = page.getByRole('button', { name: 'See what it holds' })
    this.restore = page.getByRole('button', { name: 'Restore this copy' })
    this.ready = page.getByRole('status').filter({ hasText: 'is ready' })
  }
}
