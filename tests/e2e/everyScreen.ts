import type { Page } from '@playwright/test'
import { goOn } from './server.ts'

/** The screens of the demo shop, each by its address: those of the bar, their sections, and one row of each kind. */
export const everyScreen = [
  '/',
  '/book',
  '/morning',
  '/plan/mend',
  '/plan/relay',
  '/plan/what-if',
  '/plan/use',
  '/close',
  '/conditions',
  '/verify',
  '/jobs/demo-job-07',
  '/jobs/demo-job-07/applied',
  '/jobs/demo-job-07/intake',
  ...[
    'owed',
    'invoices/demo-invoice-1',
    'takings',
    'earns',
    'quotes',
    'newQuote/demo-vehicle-40',
    'bill/demo-job-07',
    'statement/demo-customer-07',
  ].map(each => `/money/${each}`),
  '/cars/demo-vehicle-40',
  '/customers',
  '/customers/new',
  '/imports',
  '/customers/demo-customer-40',
  '/customers/demo-customer-07',
  '/customers/demo-customer-07/merge/demo-customer-40',
  ...['stock', 'orders', 'suppliers', 'safety', 'value', 'rules'].map(each => `/shelf/${each}`),
  '/shelf/product/demo-ovrel-one',
  '/shelf/product/demo-ovrel-two',
  ...['due', 'reminders', 'calls', 'results', 'rules', 'templates', 'feeds'].map(each => `/upkeep/${each}`),
  ...[
    'shop',
    'hours',
    'bays',
    'crew',
    'lending',
    'measuring',
    'times',
    'money',
    'papers',
    'backups',
    'data',
    'history',
    'diagnostics',
  ].map(each => `/settings/${each}`),
  '/settings/treatments/demo-two-layers',
  '/settings/products/demo-ovrel-one',
]

/** Goes to a screen without loading the app anew, and waits until nothing is asked for any more. */
export async function showScreen(page: Page, path: string): Promise<void> {
  await goOn(page, path)
  await page.waitForURL(url => url.pathname === path)
  await page.waitForFunction(() => {
    const screen = document.querySelector('main')
    return (
      screen?.querySelector('h1, h2') &&
      ![...screen.querySelectorAll('p')].some(p => p.textContent.endsWith(' …'))
    )
  })
  await page.waitForTimeout(100)
}
