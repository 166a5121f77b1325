import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { Job } from './pages/Job.ts'

// 10:40 in the demo shop.
test.use({ shopNow: '2026-04-15T14:40:00Z', shopDemo: true })

test('a finish is recorded at the time it happened, and a time that cannot be is refused in words', async ({
  desk,
}) => {
  const board = new Board(desk)
  await expect(board.stays.first()).toBeVisible()
  const finish = desk.getByRole('button', { name: /^Finish / })
  const at = desk.getByLabel('It happened at')
  const job = new Job(desk)
  for (let index = 0; index < (await board.stays.count()); index++) {
    await board.stays.nth(index).press('Enter')
    await expect(desk.getByRole('heading', { name: 'Steps' })).toBeVisible()
    if (await finish.isVisible()) break
    const name = await job.startable()
    if (name !== null) {
      // A step begun a while ago that nobody has told the app of.
      await job.earlier('10:20')
      await job.startAnyway(name)
      break
    }
    await desk.getByRole('link', { name: 'To the board' }).click()
    await expect(board.stays.first()).toBeVisible()
  }
  const name = (await finish.textContent())!.replace('Finish ', '').replace(/, used .*/, '')
  const row = desk.getByRole('row', { name: new RegExp(`^${name}`) })

  await job.earlier('noonish')
  await finish.click()
  await expect(desk.getByText(/Write a time such as 10:40/)).toBeVisible()
  await at.fill('23:00')
  await finish.click()
  await expect(desk.getByText(/23:00 is still to come/)).toBeVisible()
  await expect(row).toContainText('running')

  await at.fill('10:31')
  await expect(desk.getByText('Wed 15 April, 10:31')).toBeVisible()
  await finish.press('Enter')
  await expect(row).toContainText('done')
  await expect(row).toContainText('Wed 10:31')
  await expect(at).toHaveValue('')
})

test.describe('without an app behind the window', () => {
  // React tells the console of an error it caught and showed.
  test.use({ allowedErrors: [/The app is not answering/] })

  test('the window says so, and goes on by itself when it is back', async ({ desk }) => {
    const uncaught: string[] = []
    desk.on('pageerror', error => uncaught.push(error.message))
    await desk.route('**/trpc/**', route => route.abort())
    await desk.reload()
    await expect(desk.getByRole('heading', { name: 'Lustrum does not answer' })).toBeVisible()
    await desk.unroute('**/trpc/**')
    await expect(new Board(desk).stays.first()).toBeVisible({ timeout: 15_000 })
    expect(uncaught).toEqual([])
  })
})
