import type { Page } from '@playwright/test'
import { everyScreen, showScreen } from './everyScreen.ts'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'

// The present of the generated shop.
test.use({ shopNow: '2026-04-15T15:00:00Z', shopYears: 3 })

/** What stands on a screen as an alert and is no fault: a proposal to accept, and mail that nobody has set up. */
const inOrder = /^(Renew every \d+ days instead|Mail cannot go out)/

/** The pages of what happened three years ago: a visit, its car and owner, what they were billed. */
async function oldRows(desk: Page): Promise<string[]> {
  const jobId = 'years-job-0001000'
  const { customer, vehicle } = await pageApi(desk).jobs.get.query({ id: jobId })
  return [
    `/jobs/${jobId}`,
    `/jobs/${jobId}/applied`,
    `/jobs/${jobId}/intake`,
    `/cars/${vehicle.id}`,
    `/customers/${customer.id}`,
    `/money/invoices/${jobId}-invoice`,
    `/money/statement/${customer.id}`,
    `/money/bill/${jobId}`,
  ]
}

test('every screen of a shop of three years answers without an error, and nothing is still being looked up', async ({
  desk,
}) => {
  test.setTimeout(240_000)
  desk.setDefaultTimeout(20_000)
  let screen = ''
  const faults: string[] = []
  desk.on('response', answer => {
    // Questions that went out together and did not all do well are answered with 207.
    if (answer.status() >= 400 || answer.status() === 207)
      faults.push(`${screen}: ${answer.status()} ${answer.url()}`)
  })
  for (const path of [...everyScreen, ...(await oldRows(desk))]) {
    screen = path
    await showScreen(desk, path).catch((error: Error) => faults.push(`${path}: ${error.message}`))
    for (const words of await desk.getByRole('alert').allInnerTexts())
      if (!inOrder.test(words)) faults.push(`${path}: ${words}`)
  }
  expect(faults).toEqual([])
})
