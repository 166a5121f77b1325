import { expect, expectAccessible, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { Job } from './pages/Job.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('the morning sheet names every bay and person', async ({ desk, shop }) => {
  await shop.enter(desk, '/morning')
  await expect(desk.getByRole('heading', { name: /Morning sheet, Wed 15 April/ })).toBeVisible()
  for (const title of [/^Bay 1/, /^Bay 4/, /^Coming in/, /^Hands off until/, /^Going home/])
    await expect(desk.getByRole('heading', { name: title })).toBeVisible()
  await expect(desk.getByText(/data sheet, local codes and licensed practice decide/)).toBeVisible()
  await expectAccessible(desk)
})

test('a job is worked through by its real times, and what follows is projected again', async ({ desk }) => {
  const board = new Board(desk)
  await expect(board.stays.first()).toBeVisible()
  const jobs = await board.stays.count()
  let started = false
  for (let index = 0; index < jobs && !started; index++) {
    await board.stays.nth(index).press('Enter')
    await expect(desk.getByRole('heading', { name: 'Steps' })).toBeVisible()
    const here = desk.getByRole('button', { name: 'Car is here' })
    if (await here.isVisible()) {
      await here.click()
      await expect(here).toBeHidden()
    }
    const job = new Job(desk)
    const name = await job.startable()
    if (name !== null) {
      const finish = job.finish(name)
      await job.startAnyway(name)
      await finish.click()
      await expect(finish).toBeHidden()
      await expect(desk.getByRole('row', { name: new RegExp(name) }).first()).toContainText('done')
      started = true
      await expectAccessible(desk)
      const back = desk.getByRole('button', { name: `Take back the last time of ${name}` })
      await back.click()
      await expect(finish).toBeVisible()
    } else {
      await desk.getByRole('link', { name: 'To the board' }).click()
      await expect(board.stays.first()).toBeVisible()
    }
  }
  expect(started).toBe(true)
})

test('handing a car over before its profile allows it wants a reason', async ({ desk, shop }) => {
  await shop.enter(desk, '/')
  const board = new Board(desk)
  await expect(board.stays.first()).toBeVisible()
  const stays = await board.stays.count()
  const handOver = desk.getByRole('button', { name: 'Hand over' })
  for (let index = 0; index < stays; index++) {
    await board.stays.nth(index).press('Enter')
    await expect(desk.getByRole('heading', { name: 'Steps' })).toBeVisible()
    if (await handOver.isVisible()) {
      await handOver.click()
      const dialog = desk.getByRole('dialog')
      await expect(dialog.or(desk.getByText(/handed over/)).first()).toBeVisible()
      if (await dialog.getByText(/data sheet decides/).isVisible()) {
        await dialog.getByRole('button', { name: 'Hand over anyway' }).click()
        await expect(dialog.getByText('Write a short reason.')).toBeVisible()
        await expect(dialog.getByText(/data sheet decides/)).toBeVisible()
        return
      }
      // Another may go, but has checks not ticked off.
      if (await dialog.isVisible()) await dialog.getByRole('button', { name: 'Back' }).click()
    }
    await desk.getByRole('link', { name: 'To the board' }).click()
    await expect(board.stays.first()).toBeVisible()
  }
  throw new Error('the demo shop has no car that could be handed over too early at this hour')
})
