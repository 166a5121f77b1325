import { fingerOn, middleOf } from './finger.ts'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { Book } from './pages/Book.ts'
import { Job } from './pages/Job.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true, hasTouch: true })

const tablets = [
  {
    size: { width: 820, height: 1180 },
    caller: 'Wren Calloway',
    phone: '+1 212 555 0188',
    plate: 'FNG 200',
    to: /^Mon 27/,
  },
  {
    size: { width: 1180, height: 820 },
    caller: 'Ilsa Brandt',
    phone: '+1 212 555 0123',
    plate: 'FNG 201',
    to: /^Tue 28/,
  },
]

for (const { size, caller, phone, plate, to } of tablets)
  test(`by finger alone at ${size.width} × ${size.height}: a car is booked, carried on the board, and worked on`, async ({
    desk,
    shop,
  }) => {
    await desk.setViewportSize(size)
    await test.step('booked', async () => {
      await shop.enter(desk, '/book')
      await desk.getByRole('button', { name: /^New customer/ }).tap()
      await desk.getByLabel('New customer’s name').fill(caller)
      await desk.getByLabel('Phone', { exact: true }).fill(phone)
      await desk.getByLabel('Plate', { exact: true }).fill(plate)
      const book = new Book(desk)
      await book.treatment('Wash and decontaminate').tap()
      await expect(book.offers.first()).toBeChecked()
      await book.hold.tap()
      await expect(desk.getByText(`Held for ${plate}`)).toBeVisible()
      await book.confirm.tap()
      await expect(desk.getByText(`Booked: ${plate}`)).toBeVisible()
      await desk.getByRole('link', { name: 'See the board' }).tap()
    })

    const board = new Board(desk)
    await test.step('carried', async () => {
      const stay = await board.find(plate)
      await stay.scrollIntoViewIfNeeded()
      const before = await stay.getAttribute('aria-label')
      const from = await middleOf(stay)
      const { x } = await middleOf(board.drawing.getByText(to))
      const finger = await fingerOn(desk)
      await finger.drag(from, { x, y: from.y }, () => expect(board.status).toHaveText(/fits/))
      await expect(desk.getByText(/moved/).first()).toBeVisible()
      await expect(board.staysOf(plate).first()).not.toHaveAttribute('aria-label', before!)
    })

    await test.step('worked on', async () => {
      await board.staysOf(plate).first().tap()
      await expect(desk.getByRole('heading', { name: new RegExp(plate) })).toBeVisible()
      await desk.getByRole('button', { name: 'Car is here' }).tap()
      const job = new Job(desk)
      const start = desk.getByRole('button', { name: /^Start / })
      await expect(start).toBeVisible()
      await start.tap()
      const anyway = desk.getByRole('button', { name: 'Do it anyway' })
      await expect(job.finish('Wash').or(anyway)).toBeVisible()
      if (await anyway.isVisible()) await anyway.tap()
      await job.finish('Wash').tap()
      await expect(job.finish('Wash')).toBeHidden()
    })
  })
