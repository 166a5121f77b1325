import type { Locator } from '@playwright/test'
import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { CloseOfDay } from './pages/CloseOfDay.ts'
import { mailAt } from './shops/mailAt.ts'
import { bookCar, bottles, setUpShelfShop, workSteps } from './shops/shelfShop.ts'

// Monday 13 April 2026, 08:00 on the shop's clock.
test.use({ shopNow: '2026-04-13T07:00:00Z' })

let mail: TestMailServer
test.beforeAll(async () => {
  mail = await startMailServer()
})
test.afterAll(() => mail.close())

test('thirteen steps and two orders are closed in twelve acts at most', async ({ desk, shop }) => {
  await test.step('days of work on a shelf that runs short', async () => {
    const api = pageApi(desk)
    await mailAt(api, mail.port)
    const shelf = await setUpShelfShop(api)
    const { productIds, sizeIds } = shelf
    await api.shelf.receive.mutate({
      lines: [{ ...bottles(productIds.coating, sizeIds.coating, 3, 4_800), batch: 'FC-9' }],
    })
    const wash = { ...shelf, treatmentIds: shelf.treatmentIds.slice(0, 1) }
    const jobs = [
      await bookCar(api, shelf, 'QLV 318', '2026-04-13'),
      await bookCar(api, shelf, 'QLV 402', '2026-04-13'),
      await bookCar(api, shelf, 'QLV 517', '2026-04-15'),
      await bookCar(api, shelf, 'QLV 640', '2026-04-15'),
      await bookCar(api, wash, 'QLV 733', '2026-04-17'),
    ]
    for (const plate of ['QLV 808', 'QLV 919', 'QLV 929']) await bookCar(api, shelf, plate, '2026-04-20')
    await shop.restart('2026-04-17T16:40:00Z')
    await shop.enter(desk)
    const after = pageApi(desk)
    for (const id of jobs) {
      await workSteps(after, id)
      const { version, handoverAt } = await after.jobs.get.query({ id })
      await after.jobs.handOver.mutate({ id, version, at: handoverAt, reason: 'Fetched as promised' })
    }
  })

  let acts = 0
  const press = async (control: Locator) => {
    await control.click()
    acts++
  }
  await press(desk.getByRole('link', { name: 'Close of day', exact: true }))
  const close = new CloseOfDay(desk)
  // One car took more of the wipe than its recipe says; the others were looked at, and are as planned all the same.
  await press(close.correct('Panel wipe'))
  const wipe = close.step('Wipe down').first()
  await press(wipe.getByRole('button', { name: 'More Panel wipe' }))
  await press(close.confirm('Wipe down').first())
  await expect(close.step('Wipe down')).toHaveCount(3)
  const asPlanned = async () => {
    await desk.keyboard.press('c')
    acts++
  }
  await asPlanned()

  // The open bottle of another batch holds too little for a whole car: that one is asked about, and then no other.
  await expect(close.used.getByRole('form')).toHaveCount(3)
  const why = close.step('Coat').first().getByLabel('Why two batches of Coating on one car?')
  await why.fill('the rest of the open bottle went onto the roof')
  acts++
  await press(close.confirm('Coat').first())
  await expect(close.used.getByRole('form')).toHaveCount(0)
  await asPlanned()
  await expect(close.used.getByText('nothing left to confirm')).toBeVisible()

  await press(close.orders.getByRole('button', { name: 'Send both' }))
  await expect(close.orders.getByText(/✓ Order \d+ went to/)).toHaveCount(2)
  expect(mail.letters).toHaveLength(2)
  expect(acts).toBeLessThanOrEqual(12)
})
