import { testNow } from '../setup/clock.ts'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { Book } from './pages/Book.ts'
import { Frame } from './pages/Frame.ts'

/*
 * What a shop does on any day, on the day that `npm run test:clocks` chose; else on a Friday at 23:50 in New York, when
 * the next opening lies behind a weekend.
 */
test.use({ shopNow: testNow ?? '2026-11-28T04:50:00Z', shopDemo: true })

const screens = [
  'Board',
  'Book',
  'Morning',
  'Close of day',
  'Shelf',
  'Conditions',
  'Upkeep',
  'Customers',
  'Settings',
]

test('every screen opens, and says nothing that is no date and no number', async ({ desk }) => {
  const frame = new Frame(desk)
  for (const name of screens) {
    await frame.goTo(name)
    await expect(frame.screen.getByRole('heading').or(frame.screen.getByRole('group')).first()).toBeVisible()
    await desk.waitForLoadState('networkidle')
    await expect(frame.screen).not.toContainText(/Invalid|NaN|undefined|\[object/)
    await expect(frame.screen.getByText('Something went wrong')).toHaveCount(0)
  }
})

test('a caller is promised a place, and the car stands on the board at that time', async ({ desk }) => {
  await new Frame(desk).goTo('Book')
  const book = new Book(desk)
  await book.treatment('One layer').check()
  await book.newCaller({ name: 'Neve Tarrow', phone: '+1 212 555 0164', plate: 'NVT 164' })
  await book.offer(/Soonest home/).check()
  await book.hold.click()
  await book.confirm.click()
  await expect(desk.getByText('Booked: NVT 164, Neve Tarrow')).toBeVisible()
  await desk.getByRole('link', { name: 'See the board' }).click()
  await new Board(desk).find('NVT 164')
})
