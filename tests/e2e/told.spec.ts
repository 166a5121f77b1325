import { startMailServer } from '../outbox/mailServer.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { setUpQuillhaven } from './shops/quillhaven.ts'

// Tuesday, ten in the morning in London.
test.use({ shopNow: '2026-04-14T09:00:00Z' })

test('a confirmation goes out by e-mail only once its owner agreed, and what became of it stands on the job', async ({
  page: desk,
  shop,
}) => {
  const server = await startMailServer()
  await shop.enter(desk)
  const api = pageApi(desk)
  await setUpQuillhaven(api)
  const { port } = server
  await api.mail.save.mutate({
    ...{ host: '127.0.0.1', port, security: 'none' as const, user: null },
    ...{ fromName: 'Quillhaven Coatings', fromAddress: 'hello@quillhaven.example.com' },
  })
  const [treatment] = await api.treatments.list.query({})
  const treatmentIds = [treatment!.id]
  const wish = { sizeClass: 'medium' as const, condition: 'good' as const, treatmentIds }
  const { soonest } = await api.booking.offers.query(wish)
  if (!soonest.feasible) throw new Error('no place')
  const { jobId } = await api.booking.book.mutate({
    ...wish,
    plan: soonest.plan,
    customer: { name: 'Ada Merrin', phone: '', email: 'ada@example.com' },
    vehicle: { plate: 'QH 11', make: '', model: '', colour: '', sizeClass: 'medium', finish: 'gloss' },
  })
  await shop.enter(desk, `/jobs/${jobId}`)
  const send = desk.getByRole('button', { name: 'Send by e-mail' })
  const words = desk.getByRole('textbox', { name: 'What to say' })
  await words.fill('Dear Ada, please come to the back door.')
  await send.click()
  await expect(desk.getByText('The owner has not agreed to be reached this way.')).toBeVisible()
  await expect(words).toHaveValue('Dear Ada, please come to the back door.')

  const { customer } = await api.jobs.get.query({ id: jobId })
  await api.consents.give.mutate({
    ...{ customerId: customer.id, channel: 'email' },
    ...{ source: 'booking by phone', wording: 'You may write to me.' },
  })
  await send.click()
  const said = desk.getByRole('list', { name: 'What was said' })
  await expect(said).toContainText('Confirmation · sent ')
  await expect(said).toContainText('the back door')
  expect(server.letters.map(letter => letter.to)).toEqual([['ada@example.com']])
  await expectAccessible(desk)
  for (const [width, height] of [
    [820, 1180],
    [1366, 768],
    [3840, 2160],
  ] as const)
    if (process.env.LUSTRUM_LOOK) {
      await desk.setViewportSize({ width, height })
      await said.scrollIntoViewIfNeeded()
      await desk.screenshot({ path: `${process.env.LUSTRUM_LOOK}/told-${width}.png` })
    }
  await server.close()
})
