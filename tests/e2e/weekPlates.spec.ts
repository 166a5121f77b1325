import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true, hasTouch: true })

test('on the week each plate is read or shown, by hover, focus and touch', async ({ desk, shop }) => {
  await shop.enter(desk)
  const board = new Board(desk)
  await board.show('Week')
  const card = desk.getByTestId('stay-card')
  await expect(board.stays.nth(10)).toBeAttached()
  const stays = await board.stays.all()
  let told = 0
  for (const stay of stays) {
    const plate = (await stay.getAttribute('aria-label'))!.split(',')[0]!
    const drawn = await stay.evaluate(
      one => one.closest('g[data-held]')?.querySelector('[data-testid="plate"]') !== null,
    )
    // Every one is told to a hand and to the keyboard; those without a plate also to a finger.
    await stay.hover({ force: true })
    await expect(card).toContainText(plate)
    await desk.mouse.move(0, 0)
    await expect(card).toHaveCount(0)
    await stay.focus()
    await expect(card).toContainText(plate)
    await stay.blur()
    if (drawn || told > 2) continue
    told++
    await desk.mouse.move(0, 0)
    await stay.dispatchEvent('pointerdown', { pointerType: 'touch', isPrimary: true, bubbles: true })
    await expect(card).toContainText(plate)
    await stay.dispatchEvent('pointercancel', { pointerType: 'touch', isPrimary: true, bubbles: true })
    await stay.blur()
  }
})
