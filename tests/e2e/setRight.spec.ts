import { showScreen } from './everyScreen.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('a sick call from the board: what it touches is shown at once, and a way out is taken', async ({
  desk,
}) => {
  await desk.getByRole('button', { name: 'Sick or down…' }).click()
  const form = desk.getByRole('form', { name: 'Sick or down' })
  await form.getByRole('combobox', { name: 'Who or which bay' }).click()
  await desk.getByRole('group', { name: 'Sick or away' }).getByRole('option').first().click()
  await form.getByRole('button', { name: 'Record it' }).click()
  await expect(desk.getByRole('heading', { name: 'Set right' })).toBeVisible()
  const cars = desk.getByRole('list', { name: 'Promises to set right' }).getByRole('listitem')
  await expect(cars.first()).toBeVisible()
  const before = await cars.count()
  await expectAccessible(desk)
  if (process.env.LUSTRUM_LOOK)
    await desk.screenshot({ path: `${process.env.LUSTRUM_LOOK}/mend.png`, fullPage: true })
  await cars
    .getByRole('button', { name: /promise kept$/ })
    .first()
    .click()
  await expect.poll(() => cars.count()).toBeLessThan(before)
})

test('a step is given to somebody else by key, and the card beside a car tells owner, step, person and promise', async ({
  desk,
}) => {
  await showScreen(desk, '/')
  const board = new Board(desk)
  await board.show('Week')
  await board.settled()
  // The last car booked: nothing of it has begun.
  const stay = board.stays.last()
  await stay.focus()
  const [plate = '', owner = ''] = ((await stay.getAttribute('aria-label')) ?? '').split(', ')
  const card = desk.getByTestId('stay-card')
  await expect(card).toContainText(plate)
  await expect(card).toContainText(owner)
  await expect(card).toContainText(/on time for|running late|missing|taken|closed|held/)
  if (process.env.LUSTRUM_LOOK) await desk.screenshot({ path: `${process.env.LUSTRUM_LOOK}/card.png` })
  await stay.press('p')
  const dialog = desk.getByRole('dialog', { name: `Who works on ${plate}` })
  await expect(dialog.getByRole('button', { name: /^Give it/ }).first()).toBeVisible()
  if (process.env.LUSTRUM_LOOK) await desk.screenshot({ path: `${process.env.LUSTRUM_LOOK}/give.png` })
  await expectAccessible(desk)
})

test('a place that is refused says why where the car is held', async ({ desk }) => {
  const board = new Board(desk)
  await showScreen(desk, '/')
  await board.show('Week')
  await board.settled()
  for (let i = (await board.stays.count()) - 1; i >= 0; i--) {
    const stay = board.stays.nth(i)
    await stay.focus()
    await stay.press('m')
    if ((await board.status.textContent()) !== '') break
  }
  const held = desk.getByTestId('refused-here')
  for (let tries = 0; tries < 30 && !(await held.isVisible()); tries++) {
    await desk.keyboard.press('Shift+ArrowLeft')
    await expect(board.status).toHaveText(/fits|not possible/)
  }
  await expect(held).not.toBeEmpty()
  if (process.env.LUSTRUM_LOOK) await desk.screenshot({ path: `${process.env.LUSTRUM_LOOK}/refused.png` })
  await desk.keyboard.press('Escape')
  await expect(held).toBeHidden()
})
