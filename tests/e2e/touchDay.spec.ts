import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { everyScreen, showScreen } from './everyScreen.ts'
import { tap } from './finger.ts'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { CloseOfDay } from './pages/CloseOfDay.ts'
import { Reminders } from './pages/Reminders.ts'
import { mailAt } from './shops/mailAt.ts'
import { bookCar, setUpShelfShop, workSteps } from './shops/shelfShop.ts'
import { addKeeper, setUpUpkeepShop, textKeeper } from './shops/upkeepShop.ts'

test.use({ hasTouch: true })

let mail: TestMailServer
test.beforeAll(async () => {
  mail = await startMailServer()
})
test.afterAll(() => mail.close())

/** Each with a shop of its own: what is closed or sent is closed and sent once. */
const tablets = [
  { size: { width: 820, height: 1180 }, closing: '2026-04-14T07:00:00Z', writing: '2026-04-14T08:30:00Z' },
  { size: { width: 1180, height: 820 }, closing: '2026-04-14T07:05:00Z', writing: '2026-04-14T08:35:00Z' },
]

for (const { size, closing, writing } of tablets) {
  const at = `by finger alone at ${size.width} × ${size.height}`

  test.describe(`${at}, in the evening`, () => {
    test.use({ shopNow: closing, viewport: size })

    test('a day is closed: confirmed, corrected, counted, ordered', async ({ desk, shop }) => {
      const api = pageApi(desk)
      const shelf = await setUpShelfShop(api)
      await mailAt(api, mail.port)
      const job = await bookCar(api, shelf, 'QLV 318', '2026-04-14')
      for (const [plate, day] of [
        ['QLV 402', '2026-04-15'],
        ['QLV 517', '2026-04-17'],
        ['QLV 640', '2026-04-20'],
      ] as const)
        await bookCar(api, shelf, plate, day)
      await shop.restart('2026-04-14T16:40:00Z')
      await shop.enter(desk)
      await workSteps(pageApi(desk), job)

      await tap(desk.getByRole('link', { name: 'Close of day', exact: true }))
      const close = new CloseOfDay(desk)
      await tap(close.correct('Panel wipe'))
      const wipe = close.step('Wipe down')
      const used = wipe.getByLabel('Used of Panel wipe')
      const before = Number(await used.inputValue())
      await tap(wipe.getByRole('button', { name: 'More Panel wipe' }))
      expect(Number(await used.inputValue())).toBeGreaterThan(before)
      await tap(close.confirm('Wipe down'))
      await expect(close.step('Wipe down')).toHaveCount(0)
      await tap(close.asPlanned)
      await expect(close.used.getByText('nothing left to confirm')).toBeVisible()

      await tap(close.count('Coating'))
      const counting = close.counting('Coating')
      await tap(counting.getByLabel('It holds'))
      await counting.getByLabel('It holds').fill('15')
      await tap(counting.getByRole('button', { name: 'Save the count' }))
      await expect(counting).toHaveCount(0)

      const letters = mail.letters.length
      await tap(close.orders.getByRole('button', { name: 'Look first' }))
      await tap(close.send('Ferring Coatings'))
      const letter = desk.getByRole('dialog', { name: /^Send order \d+ to Ferring Coatings/ })
      await tap(letter.getByRole('button', { name: 'Send it with the PDF' }))
      await expect(close.draft('Ferring Coatings')).toHaveCount(0)
      await tap(close.orders.getByRole('button', { name: 'Send it', exact: true }))
      await expect(close.orders.getByText(/✓ Order \d+ went to/)).toBeVisible()
      await expect.poll(() => mail.letters.length).toBe(letters + 2)
    })
  })

  test.describe(`${at}, in the morning`, () => {
    test.use({ shopNow: writing, viewport: size })

    test('a reminder is written, approved and sent', async ({ desk, shop }) => {
      const api = pageApi(desk)
      const { topperId } = await setUpUpkeepShop(api)
      await addKeeper(api, topperId, { ...textKeeper, agrees: ['email'] })
      await mailAt(api, mail.port)
      await shop.enter(desk)
      await tap(desk.getByRole('link', { name: 'Upkeep', exact: true }))
      await tap(desk.getByRole('combobox', { name: 'Due in' }))
      await tap(desk.getByRole('option', { name: 'the next 3 months' }))
      await tap(desk.getByRole('button', { name: 'Write about QHV 318, topper renewal' }))
      await tap(desk.getByRole('dialog').getByRole('button', { name: 'Write it' }))
      const reminders = new Reminders(desk)
      await tap(reminders.message('Elke Strand').getByRole('button', { name: 'Approve', exact: true }))
      await expect(reminders.row('QHV 318')).toContainText('approved')
      await tap(reminders.send)
      await expect(reminders.row('QHV 318')).toContainText('sent')
      expect(mail.letters.at(-1)?.to).toEqual(['elke@example.com'])
    })
  })
}

test.describe('in the demo shop', () => {
  test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true, viewport: { width: 820, height: 1180 } })

  test('no button, field or list of choices is too small for a finger', async ({ desk }) => {
    test.setTimeout(600_000)
    const small: string[] = []
    for (const path of everyScreen) {
      await showScreen(desk, path)
      const found = await desk.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('button, summary, input, select, textarea, nav a')]
          .filter(
            each =>
              !each.closest('svg, [aria-hidden="true"]') &&
              !each.matches('[type="radio"], [type="checkbox"]'),
          )
          .filter(each => each.checkVisibility({ opacityProperty: true, visibilityProperty: true }))
          .map(each => ({
            each,
            // A field with a button in it is as large as its frame.
            box: (each.closest('[class*="Input-wrapper"]') ?? each).getBoundingClientRect(),
          }))
          // A box one pixel small is there for those who hear the page.
          .filter(({ box }) => box.width > 2 && (box.width < 43.5 || box.height < 43.5))
          .map(
            ({ each, box }) =>
              `${Math.round(box.width)} × ${Math.round(box.height)}: ${each.getAttribute('aria-label') ?? each.textContent}`,
          ),
      )
      for (const each of new Set(found)) small.push(`${path}: ${each}`)
    }
    expect(small).toEqual([])
  })
})
