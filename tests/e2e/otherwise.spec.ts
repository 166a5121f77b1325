import type { Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { setUpQuillhaven } from './shops/quillhaven.ts'

// Tuesday, ten in the morning in London.
test.use({ shopNow: '2026-04-14T09:00:00Z' })

/** The windows of a booking that goes otherwise, and what saves in each. */
const windows = [
  { item: 'Another day, or other work…', save: /^Take / },
  { item: 'A step takes longer…', save: 'Write it down' },
  { item: 'The car comes later…', save: 'Write it down' },
] as const

async function open(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'Something changed…' }).click()
  await page.getByRole('menuitem', { name: item }).click()
  await expect(page.getByRole('dialog')).toBeVisible()
}

test('of two windows that say a booking goes otherwise, the second is refused and stays open', async ({
  page: desk,
  shop,
  context,
}) => {
  await shop.enter(desk)
  const api = pageApi(desk)
  await setUpQuillhaven(api)
  const [treatment] = await api.treatments.list.query({})
  const wish = {
    ...{ sizeClass: 'medium' as const, condition: 'good' as const },
    ...{ treatmentIds: [treatment!.id], notBefore: '2026-04-15' },
  }
  const { soonest } = await api.booking.offers.query(wish)
  if (!soonest.feasible) throw new Error('no place')
  const { notBefore: _, ...work } = wish
  const { jobId } = await api.booking.book.mutate({
    ...work,
    plan: soonest.plan,
    customer: { name: 'Ada Merrin', phone: '', email: 'ada@example.com' },
    vehicle: { plate: 'QH 11', make: '', model: '', colour: '', sizeClass: 'medium', finish: 'gloss' },
  })
  const other = await context.newPage()
  for (const page of [desk, other]) await shop.enter(page, `/jobs/${jobId}`)
  const versionOf = async () => (await api.jobs.get.query({ id: jobId })).version
  for (const { item, save } of windows)
    await test.step(item, async () => {
      for (const page of [desk, other]) await open(page, item)
      const before = await versionOf()
      await desk.getByRole('dialog').getByRole('button', { name: save }).first().click()
      await expect(desk.getByRole('dialog')).toHaveCount(0)
      const after = await versionOf()
      expect(after).toBeGreaterThan(before)
      // The other window has heard of it, and is still about the booking as it was.
      await other.getByRole('dialog').getByRole('button', { name: save }).first().click()
      await expect(other.getByText(/Somebody else changed this/).first()).toBeVisible()
      await expect(other.getByRole('dialog')).toBeVisible()
      expect(await versionOf()).toBe(after)
      await other.reload()
    })
  await test.step('New promise', async () => {
    for (const page of [desk, other]) await page.getByRole('button', { name: 'New promise' }).click()
    await desk.getByRole('button', { name: 'Promise this' }).click()
    await expect(desk.getByRole('dialog')).toHaveCount(0)
    await other.getByRole('button', { name: 'Promise this' }).click()
    await expect(other.getByText(/Somebody else changed this/).first()).toBeVisible()
  })
})
