import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Palette } from './pages/Palette.ts'
import { addKeeper, setUpUpkeepShop, textKeeper } from './shops/upkeepShop.ts'

// Tuesday 14 April 2026, 09:30 on the shop's clock.
test.use({ shopNow: '2026-04-14T08:30:00Z' })

test('a text is written from the list by keyboard, sent from the phone, and its answer ends the tries', async ({
  desk,
  shop,
}) => {
  const { topperId } = await setUpUpkeepShop(pageApi(desk))
  await addKeeper(pageApi(desk), topperId, textKeeper)
  await shop.enter(desk, '/upkeep')
  await desk.getByRole('combobox', { name: 'Due in' }).click()
  await desk.getByRole('option', { name: 'the next 3 months' }).click()
  await expect(desk.getByRole('row', { name: /QHV 318/ })).toContainText(
    'no call: the owner has not agreed to calls',
  )
  await expect(desk.getByRole('button', { name: 'Skip topper renewal of QHV 318' })).toBeVisible()
  const act = desk.getByRole('button', { name: 'More acts: QHV 318, topper renewal' })
  await act.focus()
  await desk.keyboard.press('Enter')
  await desk.getByRole('menuitem', { name: 'Write a reminder: text …' }).press('Enter')
  await desk.getByRole('dialog').getByRole('button', { name: 'Write it' }).press('Enter')
  const message = desk.getByRole('region', { name: 'Message to Elke Strand' })
  await message.getByRole('button', { name: 'Approve', exact: true }).press('Enter')
  await expect(desk.getByRole('status', { name: 'Last act' })).toContainText('QHV 318 approved')

  const palette = new Palette(desk)
  await palette.open()
  await palette.search.fill('sms')
  await palette.result('Upkeep: calls, texts and letters').click()
  const text = desk.getByRole('region', { name: 'Text Elke Strand' })
  await expect(text.getByRole('img', { name: /QR code/ })).toBeVisible()
  // RFC 5724: the number, and the words as the body, percent-encoded.
  const link = await text.getByRole('link', { name: 'Open it as a text' }).getAttribute('href')
  expect(link).toMatch(/^sms:\+12025550118\?body=/)
  expect(decodeURIComponent(link!.split('body=')[1]!)).toContain('QHV 318')
  await expectAccessible(desk)
  await text.getByRole('button', { name: /^The text is sent/ }).click()
  await expect(text).toHaveCount(0)

  await shop.enter(desk, '/upkeep/reminders')
  await message.getByRole('button', { name: 'No', exact: true }).click()
  await expect(desk.getByRole('status', { name: 'Last act' })).toContainText('No more about this visit')
  await shop.enter(desk, '/upkeep/feeds')
  const open = async (whom: string, details: boolean) => {
    await desk.getByLabel('For whom').fill(whom)
    await desk.getByRole('checkbox', { name: /Show names and plates too/ }).setChecked(details)
    await desk.getByRole('button', { name: 'Make a secret link' }).click()
    await expect(desk.getByRole('row', { name: new RegExp(whom) })).toBeVisible()
    const link = await desk.getByRole('textbox', { name: 'The secret link' }).inputValue()
    await desk.getByRole('button', { name: 'Hide it' }).click()
    return link
  }
  const told = await open('the owner', true)
  const secret = await open('the crew', false)
  const feed = await fetch(secret)
  expect(feed.headers.get('content-type')).toContain('text/calendar')
  expect(await (await fetch(told)).text()).toContain('QHV 318')
  expect(await feed.text()).not.toContain('QHV 318')
  await expectAccessible(desk)
  await desk.getByRole('button', { name: 'End it: the crew' }).click()
  await expect(desk.getByRole('row', { name: /the crew/ })).toHaveCount(0)
  expect((await fetch(secret)).status).toBe(404)
})
