import { fileURLToPath } from 'node:url'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({ shopNow: '2026-04-15T15:10:00Z', shopDemo: true })

/** Where the README looks for its picture; written only when asked for, so that a test run leaves the tree as it was. */
const picture = fileURLToPath(new URL('../../assets/board.png', import.meta.url))

test('the board draws work, waiting and cure, and its picture can be taken for the README', async ({
  desk,
}) => {
  await desk.setViewportSize({ width: 1600, height: 860 })
  const board = new Board(desk)
  await expect(board.stays.first()).toBeVisible()
  await expect(desk.getByText(/^now \d\d:\d\d$/)).toBeVisible()
  const shot = await desk.screenshot(process.env.LUSTRUM_PICTURES ? { path: picture } : {})
  expect(shot.byteLength).toBeGreaterThan(40_000)
})
