import { everyScreen, showScreen } from './everyScreen.ts'
import { filledActs } from './filled.ts'
import { expect, test } from './fixtures.ts'
import { CloseOfDay } from './pages/CloseOfDay.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('no screen has two filled acts', async ({ desk }) => {
  test.setTimeout(600_000)
  const more: string[] = []
  for (const path of everyScreen) {
    await showScreen(desk, path)
    const filled = await filledActs(desk)
    if (filled.length > 1) more.push(`${path}: ${filled.join(' | ')}`)
  }
  expect(more).toEqual([])
})

test('at the close of day the filled act is the next one, through the whole of it', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/close')
  const close = new CloseOfDay(desk)
  const filled = () => filledActs(desk)
  await expect.poll(filled).toEqual(['Confirm the 3 as planned'])
  await close.correct('Ambry Foam').click()
  await close.correct('Grenn Cut').click()
  await expect.poll(filled).toEqual(['Confirm'])
  await close.count('Ovrel Two').click()
  await close.counting('Ovrel Two').getByLabel('It holds').fill('1')
  await expect.poll(filled).toEqual(['Save the count'])
  await close.counting('Ovrel Two').getByRole('button', { name: 'Cancel' }).click()
  await close.asPlanned.click()
  await expect.poll(filled).toEqual(['Send it'])
  await close.orders.getByRole('button', { name: 'Look first' }).click()
  await expect(close.send('Carrow Supply')).toBeVisible()
  await expect.poll(filled).toEqual(['Send it'])
})

test('what is typed into a bill is saved before it is invoiced', async ({ desk, shop }) => {
  await shop.enter(desk, '/money/bill/demo-job-12')
  const bill = desk.getByRole('form', { name: 'Bill' })
  await expect.poll(() => filledActs(desk)).toHaveLength(1)
  await bill.getByLabel('Deposit asked for').fill('25')
  await expect.poll(() => filledActs(desk)).toEqual(['Save'])
})
