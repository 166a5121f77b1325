import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { expect, test } from './fixtures.ts'
import { tabTo, typePair } from './keyboard.ts'
import { pageApi } from './pageApi.ts'
import { Reminders } from './pages/Reminders.ts'
import { mailAt } from './shops/mailAt.ts'
import { addKeeper, setUpUpkeepShop, textKeeper } from './shops/upkeepShop.ts'

// Tuesday 14 April 2026, 09:30 on the shop's clock.
test.use({ shopNow: '2026-04-14T08:30:00Z' })

let mail: TestMailServer
test.beforeAll(async () => {
  mail = await startMailServer()
})
test.afterAll(() => mail.close())

test('by keyboard alone a reminder goes from the list of who is due to its outcome', async ({
  desk,
  shop,
}) => {
  const api = pageApi(desk)
  const { topperId } = await setUpUpkeepShop(api)
  await addKeeper(api, topperId, { ...textKeeper, agrees: ['email'] })
  await mailAt(api, mail.port)
  await shop.enter(desk)
  const { keyboard } = desk
  await expect(desk.getByRole('heading', { name: 'Board' })).toBeVisible()
  await desk.getByRole('main').focus()
  await typePair(desk, 'g', 'u')
  await expect(desk.getByRole('heading', { name: 'Upkeep', level: 1 })).toBeVisible()

  await test.step('who is due in the next months', async () => {
    const within = desk.getByRole('combobox', { name: 'Due in' })
    await tabTo(within, 'Tab', 40)
    await keyboard.press('Enter')
    const option = desk.getByRole('option', { name: 'the next 3 months' })
    for (let at = 0; at < 8 && !(await option.getAttribute('data-combobox-selected')); at++)
      await keyboard.press('ArrowDown')
    await keyboard.press('Enter')
    await expect(within).toHaveValue('the next 3 months')
  })

  await test.step('written', async () => {
    await tabTo(desk.getByRole('button', { name: 'Write about QHV 318, topper renewal' }), 'Tab', 30)
    await keyboard.press('Enter')
    const dialog = desk.getByRole('dialog')
    await expect(dialog).toBeVisible()
    await tabTo(dialog.getByRole('button', { name: 'Write it' }), 'Tab', 5)
    await keyboard.press('Enter')
    await expect(dialog).toHaveCount(0)
  })

  const reminders = new Reminders(desk)
  const message = reminders.message('Elke Strand')
  await test.step('approved and sent', async () => {
    // The message that was just written is where the hand is.
    await tabTo(message.getByRole('button', { name: 'Approve', exact: true }), 'Tab', 12)
    await keyboard.press('Enter')
    await expect(reminders.row('QHV 318')).toContainText('approved')
    await tabTo(reminders.send, 'Shift+Tab', 15)
    await keyboard.press('Enter')
    await expect(reminders.row('QHV 318')).toContainText('sent')
    expect(mail.letters.map(letter => letter.to)).toEqual([['elke@example.com']])
  })

  await test.step('answered', async () => {
    // Sent, its button is gone, and the keyboard is at the message again.
    await tabTo(message.getByRole('button', { name: /^They take it/ }).first(), 'Tab', 12)
    await keyboard.press('Enter')
    await expect(reminders.said).toContainText('QHV 318 booked for')
  })
})
