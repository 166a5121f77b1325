import type { Locator, Page } from '@playwright/test'
import { fingerOn, middleOf } from './finger.ts'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({
  shopNow: '2026-04-15T13:40:00Z',
  shopDemo: true,
  viewport: { width: 820, height: 1180 },
  hasTouch: true,
})

/** Somebody of the crew, and a car of the board of which nothing has begun. */
async function whoAndCar(desk: Page): Promise<{ person: Locator; stay: Locator; plate: string }> {
  const board = new Board(desk)
  await board.show('Week')
  const stay = board.stays.last()
  await expect(stay).toBeVisible()
  const [plate = ''] = ((await stay.getAttribute('aria-label')) ?? '').split(', ')
  const person = desk
    .getByRole('list', { name: /The crew/ })
    .getByRole('listitem')
    .first()
  return { person, stay, plate }
}

test('somebody is carried onto a car by finger, in reach of a finger, and is whom the step would go to', async ({
  desk,
}) => {
  const { person, stay, plate } = await whoAndCar(desk)
  // Apple's guidelines ask for 44 points, WCAG 2.2 (2.5.5) for 44 CSS pixels.
  expect((await person.boundingBox())!.height).toBeGreaterThanOrEqual(44)
  const finger = await fingerOn(desk)
  const name = (await person.textContent()) ?? ''
  await finger.drag(await middleOf(person), await middleOf(stay), () =>
    expect(desk.getByText(`${name} → ${plate}`)).toBeVisible(),
  )
  const dialog = desk.getByRole('dialog', { name: `Who works on ${plate}` })
  await expect(dialog.getByRole('group').first()).toBeVisible()
  await expect
    .poll(() =>
      dialog
        .getByRole('combobox', { name: 'To' })
        .evaluateAll(fields => fields.map(field => (field as HTMLInputElement).value)),
    )
    .toContain(name)
  await expect(desk.getByText(`${name} → ${plate}`)).toHaveCount(0)
})

test('somebody is carried by mouse; let go beside every car, nobody is asked anything', async ({ desk }) => {
  const { person, stay, plate } = await whoAndCar(desk)
  const carryTo = async ({ x, y }: { x: number; y: number }) => {
    const from = await middleOf(person)
    await desk.mouse.move(from.x, from.y)
    await desk.mouse.down()
    await desk.mouse.move(x, y, { steps: 6 })
    await desk.mouse.up()
  }
  await carryTo({ x: 10, y: 10 })
  await expect(desk.getByRole('dialog')).toHaveCount(0)
  await carryTo(await middleOf(stay))
  await expect(desk.getByRole('dialog', { name: `Who works on ${plate}` })).toBeVisible()
})
