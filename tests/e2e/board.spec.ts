import { inColours } from './accessible.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

/** The last stay below `below` on the board that may be moved, by its own word: nothing of it has begun. */
async function pickMovable(board: Board, below?: number): Promise<number> {
  await board.settled()
  await expect(board.stays.first()).toBeVisible()
  for (let index = (below ?? (await board.stays.count())) - 1; index >= 0; index--) {
    const stay = board.stays.nth(index)
    await stay.focus()
    await stay.press('m')
    if ((await board.status.textContent()) !== '') {
      await stay.press('Escape')
      return index
    }
  }
  throw new Error('nothing on the board can be moved')
}

/** Carries a stay to the right until it fits, at most ten hours; a stay late in the week may find nothing there. */
async function carriedOn(board: Board, index: number): Promise<boolean> {
  const stay = board.stays.nth(index)
  await stay.focus()
  await stay.press('m')
  for (let tries = 0; tries < 40; tries++) {
    await stay.press('ArrowRight')
    await expect(board.status).toHaveText(/fits|not possible/)
    if (/fits/.test((await board.status.textContent()) ?? '')) return true
  }
  await stay.press('Escape')
  return false
}

test('a stay is moved by keys, checked while it moves, and taken back', async ({ desk }) => {
  const board = new Board(desk)
  await board.show('Week')
  let index = await pickMovable(board)
  let before = await board.stays.nth(index).getAttribute('aria-label')
  while (!(await carriedOn(board, index))) {
    index = await pickMovable(board, index)
    before = await board.stays.nth(index).getAttribute('aria-label')
  }
  const stay = board.stays.nth(index)
  await stay.press('Enter')
  await expect(desk.getByText(/moved/).first()).toBeVisible()
  const plate = before!.split(',')[0]!
  await expect
    .poll(() => board.staysOf(plate).evaluateAll(all => all.map(one => one.ariaLabel)))
    .not.toContain(before)
  await desk.keyboard.press('z')
  await expect
    .poll(() => board.staysOf(plate).evaluateAll(all => all.map(one => one.ariaLabel)))
    .toContain(before)
})

test('a place that is taken is refused in words and cannot be saved', async ({ desk }) => {
  const board = new Board(desk)
  await board.show('Week')
  const stay = board.stays.nth(await pickMovable(board))
  const before = await stay.getAttribute('aria-label')
  await stay.focus()
  await stay.press('m')
  // One bay after another and back through the days: somewhere a booked car stands in the way.
  for (let tries = 0; tries < 60; tries++) {
    await stay.press(tries % 4 === 3 ? 'ArrowUp' : 'ArrowLeft')
    await expect(board.status).toHaveText(/fits|not possible/)
    if (/not possible/.test((await board.status.textContent()) ?? '')) break
  }
  await expect(board.status).toHaveText(/not possible\. \S/)
  await stay.press('Enter')
  await expect(board.status).toHaveText(/not possible/)
  await stay.press('Escape')
  await desk.reload()
  await board.show('Week')
  await expect(board.stays.first()).toBeVisible()
  const labels = await board.stays.evaluateAll(all => all.map(one => one.ariaLabel))
  expect(labels).toContain(before)
})

test('a drag with the mouse follows the grid and says what it does', async ({ desk }) => {
  const board = new Board(desk)
  await board.show('Week')
  const stay = board.stays.nth(await pickMovable(board))
  const box = (await stay.boundingBox())!
  await desk.mouse.move(box.x + 10, box.y + 10)
  await desk.mouse.down()
  await desk.mouse.move(box.x + 60, box.y + 14, { steps: 5 })
  await expect(board.status).toHaveText(/fits|not possible/)
  await desk.mouse.move(box.x + 10, box.y + 10, { steps: 5 })
  await desk.mouse.up()
})

for (const size of [
  { width: 820, height: 1180 },
  { width: 1366, height: 768 },
])
  test(`a plate that is shown is whole, at ${size.width} by ${size.height}`, async ({ desk }) => {
    await desk.setViewportSize(size)
    const board = new Board(desk)
    for (const days of ['Day', 'Three days', 'Week'] as const) {
      await board.show(days)
      await expect(desk.getByTestId('plate').first()).toBeVisible()
      const cut = await desk.getByTestId('plate').evaluateAll(plates =>
        plates
          .filter(plate => {
            const box = plate.getBoundingClientRect()
            const stay = plate.closest('g[data-held]')!.lastElementChild!.getBoundingClientRect()
            return (
              box.left < stay.left - 1 ||
              box.right > stay.right + 1 ||
              box.top < stay.top - 1 ||
              box.bottom > stay.bottom + 1
            )
          })
          .map(plate => plate.textContent),
      )
      expect(cut, days).toEqual([])
    }
  })

test('the board is accessible, by day, three days and week, in light and dark', async ({ desk }) => {
  const board = new Board(desk)
  for (const scheme of ['light', 'dark'] as const) {
    await inColours(desk, scheme)
    for (const days of ['Day', 'Three days', 'Week'] as const) {
      await board.show(days)
      await expect(board.drawing).toBeVisible()
      await expectAccessible(desk)
    }
  }
})
