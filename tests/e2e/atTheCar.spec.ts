import type { Page } from '@playwright/test'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'

// 10:40 on a Wednesday in the demo shop.
test.use({ shopNow: '2026-04-15T14:40:00Z', shopDemo: true })

/** Books these treatments, has the car come now, and begins and ends the first steps of it. */
async function worked(
  desk: Page,
  { vehicleId, sizeClass }: { vehicleId: string; sizeClass: 'medium' | 'large' },
  treatmentIds: string[],
  steps: number,
): Promise<string> {
  const api = pageApi(desk)
  const { soonest } = await api.booking.offers.query({
    treatmentIds,
    sizeClass,
    condition: 'good',
    vehicleId,
  })
  if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
  const { jobId: id } = await api.booking.book.mutate({
    treatmentIds,
    condition: 'good',
    vehicleId,
    plan: soonest.plan,
  })
  const job = () => api.jobs.get.query({ id })
  await api.jobs.arrive.mutate({ id, version: (await job()).version })
  for (let position = 0; position < steps; position++) {
    const reason = 'Tried in the browser'
    await api.jobs.startStep.mutate({ id, version: (await job()).version, position, reason, accepted: true })
    await api.jobs.finishStep.mutate({ id, version: (await job()).version, position })
  }
  return id
}

test('a test spot’s result shows what it does to time and price, and the customer’s answer is kept', async ({
  desk,
  shop,
}) => {
  const id = await worked(
    desk,
    { vehicleId: 'demo-vehicle-39', sizeClass: 'medium' },
    ['demo-test-spot', 'demo-one-step'],
    4,
  )
  await shop.enter(desk, `/jobs/${id}`)
  const form = desk.getByRole('form', { name: 'Test spot' })
  await form.getByLabel('What worked: product, pad, passes').fill('Fine polish, soft pad, two passes')
  await form.getByLabel('One panel takes').fill('40')
  await form.getByLabel('Clear coat off').fill('0.24')
  await form.getByLabel('Gloss before').fill('82')
  await form.getByLabel('Gloss after').fill('91')
  await form.getByRole('button', { name: 'Save the result' }).click()
  // 40 min × 11 panels are 440, on the grid 450; a polish of 3 h 30 min was booked.
  const correction = desk.getByRole('row', { name: /^Correction/ })
  await expect(correction).toContainText('3 h 30')
  await expect(correction).toContainText('7 h 30')
  await expect(desk.getByText('eleven panels alike (common practice, no source)')).toBeVisible()
  await expect(desk.getByText(/0\.24 mil off one spot is much/)).toBeVisible()
  await expectAccessible(desk)

  const answer = desk.getByRole('form', { name: 'The customer’s answer' })
  await answer.getByLabel('Price agreed').fill('700')
  await answer.getByRole('button', { name: 'Save the answer' }).click()
  await expect(answer).toHaveCount(0)
  await expect(desk.getByText(/, phone, /)).toBeVisible()
  await expect(desk.getByRole('row', { name: /^Price/ })).toContainText('700.00')

  // One act back from the answer, one from the result.
  await desk.getByRole('button', { name: 'Take the answer back' }).click()
  await expect(answer).toBeVisible()
  await desk.getByRole('button', { name: 'Take the result back' }).click()
  await expect(form.getByLabel('What worked: product, pad, passes')).toHaveValue('')
})

test('a car wiped and left too long is wiped again by one key', async ({ desk, shop }) => {
  await shop.enter(desk)
  const id = await worked(desk, { vehicleId: 'demo-vehicle-41', sizeClass: 'large' }, ['demo-topper'], 3)
  // Wiped at 10:40; 45 minutes are its limit.
  await shop.restart('2026-04-15T15:30:00Z')
  await shop.enter(desk, `/jobs/${id}`)
  const late = desk.getByRole('alert').filter({ hasText: '"Topper" comes too late after "Panel wipe"' })
  await expect(late).toBeVisible()
  await expectAccessible(desk)
  await late.getByRole('button', { name: /^Add Panel wipe again, / }).click()
  await expect(late).toHaveCount(0)
  await expect(desk.getByRole('row', { name: /Panel wipe again/ })).toBeVisible()
  await expect(desk.getByRole('button', { name: 'Start Panel wipe again' })).toBeVisible()
})
