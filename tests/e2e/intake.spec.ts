import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Intake } from './pages/Intake.ts'
import { bookCar, setUpShelfShop } from './shops/shelfShop.ts'

// Tuesday 14 April 2026, eight o'clock on the shop's clock; a tablet held upright, worked with a finger.
test.use({ shopNow: '2026-04-14T07:00:00Z', viewport: { width: 820, height: 1180 }, hasTouch: true })

/** A small picture as a phone might send it: made in the page, so that no file of somebody's is needed. */
const picture = () =>
  new Promise<string>(resolve => {
    const canvas = document.createElement('canvas')
    canvas.width = 640
    canvas.height = 480
    const drawn = canvas.getContext('2d')!
    drawn.fillStyle = '#446'
    drawn.fillRect(0, 0, 640, 300)
    resolve(canvas.toDataURL('image/jpeg').split(',')[1]!)
  })

test('a car is taken in: marked, measured, photographed, read again after a reload, and signed by its owner', async ({
  desk,
  shop,
}) => {
  const api = pageApi(desk)
  const shelf = await setUpShelfShop(api)
  const jobId = await bookCar(api, shelf, 'QLV 318', '2026-04-14')
  await shop.enter(desk, `/jobs/${jobId}`)
  await desk.getByRole('link', { name: 'intake', exact: true }).tap()
  const intake = new Intake(desk)

  // By finger, and by keyboard: the same mark, said in words too.
  await intake.chip('Chip').check({ force: true })
  await intake.panel('Bonnet').tap()
  await intake.chip('Swirls').check({ force: true })
  await intake.chip('Moderate').check({ force: true })
  await intake.panel('Roof').focus()
  await desk.keyboard.press('Enter')
  await expect(intake.marks).toContainText(['Chip, light, Bonnet', 'Swirls, moderate, Roof'])
  await desk.getByRole('button', { name: /^Mark 2: Swirls/ }).focus()
  await desk.keyboard.press('ArrowLeft')
  await desk.keyboard.press('Delete')
  await expect(intake.marks).toHaveCount(1)
  await desk.getByLabel('Note on mark 1').fill('stone')

  await desk.getByLabel('The gauge shows').selectOption('um')
  for (const um of ['118', '121', '72']) await intake.measure(um)
  await desk.getByRole('button', { name: 'Paste or open a list' }).tap()
  const list = desk.waitForEvent('filechooser')
  await desk.getByLabel('or a CSV file').tap()
  const lines = Buffer.from('Roof 119 117\n'.repeat(2_000))
  await (await list).setFiles({ name: 'gauge.csv', mimeType: 'text/csv', buffer: lines })
  await expect(desk.getByText(/^The file is larger than 20 kB/)).toBeVisible()
  await expect(desk.getByLabel('Readings to paste')).toHaveValue('')
  await desk.getByLabel('Readings to paste').fill('Roof 119 117\nLeft wing 122 120\nBoot lid 240 231')
  await desk.getByRole('button', { name: 'Read it' }).tap()
  await expect(intake.summary.getByRole('row', { name: /Bonnet/ })).toContainText('Under the floor')
  await expect(intake.summary.getByRole('row', { name: /Boot lid/ })).toContainText('Likely repainted')

  // Nothing is saved yet: a reload of the page leaves all of it where it was.
  await desk.reload()
  await expect(intake.marks).toContainText(['Chip, light, Bonnet'])
  await expect(desk.getByLabel('Note on mark 1')).toHaveValue('stone')

  const chooser = desk.waitForEvent('filechooser')
  await desk.getByRole('button', { name: 'Choose photos' }).tap()
  const buffer = Buffer.from(await desk.evaluate(picture), 'base64')
  await (await chooser).setFiles([
    { name: 'front.jpg', mimeType: 'image/jpeg', buffer },
    { name: 'run.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('#!/bin/sh\n') },
  ])
  await expect(desk.getByRole('img', { name: '1: front.jpg' })).toBeVisible()
  await expect(desk.getByRole('alert')).toContainText('run.jpg: This is no photo')

  await desk.getByLabel('Odometer', { exact: true }).fill('41210')
  await desk.getByLabel('Keys', { exact: true }).fill('2')
  await desk.getByLabel('Belongings left in it').fill('Child seat')
  await expectAccessible(desk)
  await desk.getByRole('button', { name: 'Sign the intake' }).tap()
  await expect(desk.getByText('Go over the damage with the owner').first()).toBeVisible()
  await desk.getByLabel(/the damage marked here is agreed/).check()
  await intake.sign()
  await desk.getByRole('button', { name: 'Sign the intake' }).tap()

  const page = desk.getByRole('article', { name: 'Page 1' })
  await expect(page).toContainText('Signed by Keeper of QLV 318')
  await expect(page).toContainText('Chip, light, Bonnet: stone')
  await expect(page.getByRole('img', { name: 'Signature of Keeper of QLV 318' })).toBeVisible()
  await expect(page.getByRole('img', { name: '1: front.jpg' })).toBeVisible()
  await expectAccessible(desk)

  // Measured again once the work is done: before and after side by side.
  await desk.getByRole('radio', { name: 'Roof' }).check({ force: true })
  await desk.getByLabel('The gauge shows').selectOption('um')
  await intake.measure('114')
  await desk.getByRole('button', { name: 'Save these readings' }).tap()
  await expect(desk.getByRole('img', { name: /Thickness, typical of each panel: Roof/ })).toBeVisible()

  // What was wrong is put right on a further page, signed again.
  await desk.getByRole('button', { name: 'Correct it' }).tap()
  await desk.getByLabel('Keys', { exact: true }).fill('1')
  await desk.getByLabel('What was wrong').fill('The second key was for the house')
  // Without a hand for the pen, by the keyboard.
  await desk.getByLabel('Confirmed with the typed name in place of a signature').focus()
  await desk.keyboard.press('Space')
  await desk.getByRole('button', { name: 'Sign the correction of page 1' }).tap()
  await expect(desk.getByRole('article', { name: 'Page 2' })).toContainText(
    'Corrects page 1: The second key was for the house',
  )
  await expect(desk.getByText('Confirmed with the typed name: Keeper of QLV 318')).toBeVisible()
  await expect(page).toContainText('Corrected by page 2')
})
