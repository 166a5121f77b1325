import { readPdf } from '../documents/readPdf.ts'
import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { CloseOfDay } from './pages/CloseOfDay.ts'
import { bookCar, setUpShelfShop, workSteps } from './shops/shelfShop.ts'

// Tuesday 14 April 2026, 08:00 on the shop's clock.
test.use({ shopNow: '2026-04-14T07:00:00Z' })

let mail: TestMailServer
test.beforeAll(async () => {
  mail = await startMailServer()
})
test.afterAll(() => mail.close())

test('a day is closed: steps confirmed, a bottle weighed, a count corrected, two orders sent, a PDF read', async ({
  desk,
  shop,
}) => {
  const today = await test.step('a day of work on a shelf that runs short', async () => {
    const shelf = await setUpShelfShop(pageApi(desk))
    const job = await bookCar(pageApi(desk), shelf, 'QLV 318', '2026-04-14')
    await bookCar(pageApi(desk), shelf, 'QLV 402', '2026-04-15')
    await bookCar(pageApi(desk), shelf, 'QLV 517', '2026-04-17')
    await bookCar(pageApi(desk), shelf, 'QLV 640', '2026-04-20')
    return { ...shelf, job }
  })
  await shop.restart('2026-04-14T16:40:00Z')
  await shop.enter(desk)
  await workSteps(pageApi(desk), today.job)

  await test.step('how mail leaves the shop is entered', async () => {
    await shop.enter(desk, '/shelf/rules')
    const form = desk.getByRole('form', { name: 'Outgoing mail' })
    await form.getByLabel('Mail server').fill('127.0.0.1')
    await form.getByLabel('Port').fill(String(mail.port))
    await form.getByRole('combobox', { name: 'Encryption' }).click()
    await desk.getByRole('option', { name: 'Not encrypted' }).click()
    await form.getByLabel('Sender’s name').fill('Quillhaven Coatings')
    await form.getByLabel('Sender’s address').fill('desk@quillhaven.example.com')
    await form.getByRole('button', { name: 'Save the mail settings' }).click()
    await expect(desk.getByRole('form', { name: 'Try the mail settings' })).toBeVisible()
    await expectAccessible(desk)
  })

  await desk.getByRole('link', { name: 'Close of day', exact: true }).click()
  const close = new CloseOfDay(desk)
  await expect(close.asPlanned).toHaveText('Confirm the 3 as planned')
  await expectAccessible(desk)

  await test.step('one step is right, one is corrected by a tap, one by weight', async () => {
    for (const product of ['Panel wipe', 'Coating']) await close.correct(product).click()
    await expect(close.used.getByRole('form')).toHaveCount(2)
    // What is only looked at is still as planned; what is changed is not.
    await expect(close.asPlanned).toHaveText('Confirm the 3 as planned')
    const wipe = close.step('Wipe down')
    const before = Number(await wipe.getByLabel('Used of Panel wipe').inputValue())
    await wipe.getByRole('button', { name: 'More Panel wipe' }).click()
    expect(Number(await wipe.getByLabel('Used of Panel wipe').inputValue())).toBeGreaterThan(before)
    await expect(close.asPlanned).toHaveText('Confirm the 2 as planned')
    const coat = close.step('Coat')
    await coat.getByRole('button', { name: 'Weigh the bottle of Coating' }).click()
    const weight = coat.getByLabel('Weight of the bottle of Coating')
    await weight.fill('40')
    await expect(close.asPlanned).toHaveText('Confirm it as planned')
    await desk.getByRole('main').focus()
    await desk.keyboard.press('c')
    await expect(close.asPlanned).toHaveCount(0)
    await close.confirm('Wipe down').click()
    await expect(close.used.getByRole('form')).toHaveCount(1)
    await close.confirm('Coat').click()
    await expect(weight).toHaveAttribute('aria-invalid', 'true')
    // 62 g empty and 18 ml left at 1.05 g/ml: 80.9 g, so 32 ml of the 50 ml were used.
    await weight.fill('80.9')
    await close.confirm('Coat').click()
    await expect(close.used.getByText('nothing left to confirm')).toBeVisible()
  })

  await test.step('a code is learned from a scan, and the next scan counts that bottle', async () => {
    // A number for use within one shop (prefix 200), so nobody's product; its last digit is the check digit (GS1 General
    // Specifications, sections 1.4 and 7.9; from memory).
    const code = '2006381333933'
    await close.scan('2006381333930')
    const scanned = desk.getByRole('status', { name: 'Scanned' })
    await expect(scanned).toContainText('should be 3')
    await scanned.getByRole('button', { name: 'Close' }).click()
    await close.scan(code)
    const learn = desk.getByRole('form', { name: `Which product has 0${code}` })
    await learn.getByRole('combobox', { name: 'It belongs to' }).fill('Panel')
    await desk.getByRole('option', { name: 'Panel wipe' }).click()
    await learn.getByRole('button', { name: 'Remember it' }).click()
    await expect(close.counting('Panel wipe')).toBeVisible()
    await close.counting('Panel wipe').getByRole('button', { name: 'Cancel' }).click()
    await close.scan(code)
    const counting = close.counting('Panel wipe')
    await expect(counting).toBeVisible()
    await counting.getByLabel('It holds').fill('40')
    await counting.getByLabel('Why').fill('a spill nobody wrote down')
    await counting.getByRole('button', { name: 'Save the count' }).click()
    await expect(close.shelf.getByRole('status').first()).toContainText('40 ml')
  })

  await test.step('two orders are looked through and sent', async () => {
    await expect(close.orders.getByRole('button', { name: 'Send both' })).toBeVisible()
    // By the label the product is sold under, not by what that measures.
    await expect(close.orders).toContainText(/\d+ × 50 ml Coating/)
    await close.orders.getByRole('button', { name: 'Look first' }).click()
    await expect(close.send('Ferring Coatings')).toBeVisible()
    await expect(close.send('Hallam Trade Chemicals')).toBeVisible()
    const packs = close.draft('Ferring Coatings').getByLabel('Packs of Coating')
    const before = await packs.inputValue()
    await packs.focus()
    await close.scan('2006381333933')
    // The scan counts its bottle; the field it was typed into keeps what it had.
    await expect(close.counting('Panel wipe')).toBeVisible()
    expect(await packs.inputValue()).toBe(before)
    await close.counting('Panel wipe').getByRole('button', { name: 'Cancel' }).click()
    // A hand that is merely quick is not a scanner, and loses nothing.
    await packs.selectText()
    await desk.keyboard.type('4321')
    await expect(packs).toHaveValue('4321')
    await packs.fill('4')
    await close.draft('Ferring Coatings').getByRole('button', { name: 'Save', exact: true }).click()
    await expect(close.send('Ferring Coatings')).toBeEnabled()
    await expectAccessible(desk)
    for (const supplier of ['Ferring Coatings', 'Hallam Trade Chemicals']) {
      await close.send(supplier).click()
      const letter = desk.getByRole('dialog', { name: new RegExp(`Send order \\d+ to ${supplier}`) })
      await letter.getByRole('button', { name: 'Send it with the PDF' }).click()
      await expect(close.orders.getByText(/✓ Order \d+ went to/)).toContainText(
        supplier.split(' ')[0]!.toLowerCase(),
      )
      await expect(close.draft(supplier)).toHaveCount(0)
    }
    expect(mail.letters.map(letter => letter.to)).toEqual([
      ['desk@ferring.example.com'],
      ['orders@hallam.example.com'],
    ])
    for (const letter of mail.letters) {
      expect(letter.from).toBe('desk@quillhaven.example.com')
      expect(letter.parts.map(part => part.type)).toContain('application/pdf')
    }
  })

  await test.step('the PDF of the first one says what was ordered', async () => {
    await shop.enter(desk, '/shelf/orders')
    await desk.getByRole('link', { name: /Ferring Coatings/ }).click()
    // A screen that takes no scans says what was scanned, and opens nothing unasked.
    await close.scan('2006381333933')
    await expect(desk.getByRole('alert').filter({ hasText: 'Scanned Panel wipe' })).toBeVisible()
    const path = await desk.getByRole('link', { name: /as PDF/ }).getAttribute('href')
    const bytes = await (await desk.request.get(shop.address + path)).body()
    const { pages } = await readPdf(bytes)
    const lines = pages.flatMap(page => page.lines)
    expect(lines.some(line => line.includes('Ferring Coatings'))).toBe(true)
    expect(lines.filter(line => line.includes('FC-50'))).toEqual([expect.stringMatching(/\b4\b/)])
    await expectAccessible(desk)
  })
})

test('what was ordered comes in part and the rest is asked after; a bottle’s label leads to its record', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/shelf/orders')
  const order = desk.getByRole('list', { name: 'Every order' }).getByRole('link', { name: /Ferring/ })
  await order.click()
  const receive = desk.getByRole('form', { name: /^Receive order/ })
  await receive.getByLabel('Containers of Coating that came').fill('9')
  await receive.getByRole('button', { name: 'Put it on the shelf' }).click()
  await expect(receive.getByLabel('Containers of Coating that came')).toHaveAttribute('aria-invalid', 'true')
  await receive.getByLabel('Containers of Coating that came').fill('1')
  await receive.getByLabel('Printed date of Coating').fill('2027-01-31')
  await receive.getByLabel('Batch of Coating').fill('FC-9')
  await receive.getByRole('button', { name: 'Put it on the shelf' }).click()
  await expect(order).toContainText('partly received')
  await desk.getByRole('button', { name: 'Ask after it' }).click()
  await desk.getByRole('dialog').getByRole('button', { name: 'Send it', exact: true }).click()
  await expect(desk.getByText(/^✓ .*desk@ferring\.example\.com/)).toBeVisible()
  await expect
    .poll(() => mail.letters.map(letter => letter.to[0]))
    .toEqual(['desk@ferring.example.com', 'orders@hallam.example.com', 'desk@ferring.example.com'])
  await expectAccessible(desk)

  await shop.enter(desk, '/shelf')
  await desk.getByRole('link', { name: 'Coating', exact: true }).click()
  const bottle = desk.getByRole('row', { name: /batch FC-9/ })
  await expect(bottle).toContainText('31 Jan 2027')
  await expectAccessible(desk)
  const path = (await bottle.getByRole('link', { name: /^Label/ }).getAttribute('href'))!
  const { pages } = await readPdf(await (await desk.request.get(shop.address + path)).body())
  expect(pages.flatMap(page => page.lines).join('\n')).toContain('Coating')
  const lotId = /label\/([\w-]+)\.pdf/.exec(path)![1]!
  await shop.enter(desk, `/shelf/lot/${lotId}`)
  await expect(desk.getByText(/^The label leads to no\. \d+/)).toBeVisible()
  await expect(desk.getByRole('heading', { name: 'Coating', level: 1 })).toBeVisible()
})
