import type { Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { Keyboard, type Layout, layouts, strokesOf } from './layouts.ts'
import { Board } from './pages/Board.ts'
import { CloseOfDay } from './pages/CloseOfDay.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

/** Goes there by G and a letter, out of any field: a screen may put the cursor into its first one. */
async function go(desk: Page, keyboard: Keyboard, letter: string, heading: string | RegExp) {
  await desk.getByRole('main').focus()
  await keyboard.press('g', letter)
  await expect(desk.getByRole('main').getByRole('heading', { name: heading }).first()).toBeVisible()
}

async function everyKey(desk: Page, layout: Layout): Promise<void> {
  const keyboard = await Keyboard.at(desk, layout)
  const board = new Board(desk)
  const days = (name: string) =>
    desk.getByRole('radiogroup', { name: 'Days shown' }).getByRole('radio', { name, exact: true })

  await test.step('? opens the help, and no key of a screen reaches through it', async () => {
    await board.settled()
    const now = board.drawing
    await expect(now).toHaveAccessibleName('Bay board, 3 days')
    await keyboard.press('?')
    const help = desk.getByRole('dialog', { name: 'Help' })
    await expect(help).toBeVisible()
    await keyboard.press('7')
    await desk.keyboard.press('Escape')
    await expect(help).toBeHidden()
    await expect(now).toHaveAccessibleName('Bay board, 3 days')
  })

  await test.step('digits choose the days, with Shift or without, from the chosen one itself too', async () => {
    for (const [digit, name] of [
      ['1', 'Day'],
      ['3', 'Three days'],
      ['7', 'Week'],
    ] as const)
      for (const stroke of strokesOf(layout, digit)) {
        await days(digit === '3' ? 'Week' : 'Three days').focus()
        await desk.waitForTimeout(100)
        await keyboard.strike(stroke)
        await expect(days(name)).toBeChecked()
      }
  })

  await test.step('E, L and T turn them', async () => {
    await keyboard.press('1')
    await expect(days('Day')).toBeChecked()
    const shown = desk.getByText(/15 April|16 April|14 April/).first()
    for (const [key, date] of [
      ['l', '16 April'],
      ['t', '15 April'],
      ['e', '14 April'],
      ['t', '15 April'],
    ] as const) {
      await keyboard.press(key)
      await expect(shown).toContainText(date)
    }
  })

  await test.step('G and a letter go to each screen of the bar', async () => {
    for (const [letter, heading] of [
      ['k', 'Book a car'],
      ['m', /^Morning sheet/],
      ['d', /^Close of day/],
      ['h', 'Shelf'],
      ['y', 'Owed'],
      ['o', 'Conditions'],
      ['u', 'Upkeep'],
      ['c', 'Customers'],
      ['s', 'Shop'],
      ['b', 'Board'],
    ] as const)
      await go(desk, keyboard, letter, heading)
  })

  await test.step('M picks up, Z takes back; P asks who does it', async () => {
    await keyboard.press('7')
    await board.settled()
    const stay = await movable(board, keyboard)
    const before = (await stay.getAttribute('aria-label'))!
    await keyboard.press('m')
    for (let tries = 0; tries < 40; tries++) {
      await stay.press('ArrowRight')
      await expect(board.status).toHaveText(/fits|not possible/)
      if (/fits/.test((await board.status.textContent()) ?? '')) break
    }
    await stay.press('Enter')
    await expect(desk.getByText(/moved$/).first()).toBeVisible()
    const all = () => board.stays.evaluateAll(stays => stays.map(one => one.ariaLabel))
    await expect.poll(all).not.toContain(before)
    await keyboard.press('z')
    await expect.poll(all).toContain(before)
    await board.stays.first().focus()
    await keyboard.press('p')
    await expect(desk.getByRole('dialog')).toBeVisible()
    await desk.keyboard.press('Escape')
    await expect(desk.getByRole('dialog')).toBeHidden()
  })

  await test.step('/ goes to the code, C, U, H and O to the parts of the evening', async () => {
    await go(desk, keyboard, 'd', /^Close of day/)
    const close = new CloseOfDay(desk)
    const focused = desk.locator(':focus')
    await keyboard.press('/')
    await expect(focused).toHaveJSProperty('tagName', 'INPUT')
    await expect(focused).toHaveValue('')
    for (const [key, part] of [
      ['h', close.shelf],
      ['o', close.orders],
      ['u', close.used],
    ] as const) {
      await desk.getByRole('main').focus()
      await keyboard.press(key)
      await expect(part.locator(':focus').or(part.and(focused))).toHaveCount(1)
    }
  })

  await test.step('Ctrl K finds, Ctrl Z takes back', async () => {
    await desk.getByRole('main').focus()
    await keyboard.withControl('k')
    await expect(desk.getByRole('dialog', { name: 'Find' })).toBeVisible()
    await desk.keyboard.press('Escape')
    await expect(desk.getByRole('dialog')).toBeHidden()
    await desk.getByRole('main').focus()
    await keyboard.withControl('z')
    await expect(desk.getByText(/^(Taken back|Not taken back)$/)).toBeVisible()
  })
}

/** The last stay of the board that may be moved, with the focus on it: nothing of it has begun. */
async function movable(board: Board, keyboard: Keyboard) {
  for (let index = (await board.stays.count()) - 1; index >= 0; index--) {
    const stay = board.stays.nth(index)
    await stay.focus()
    await keyboard.press('m')
    if ((await board.status.textContent()) === '') continue
    await stay.press('Escape')
    return stay
  }
  throw new Error('nothing on the board can be moved')
}

for (const layout of layouts)
  test(`the keys the screens name work as a ${layout} keyboard sends them`, ({ desk }) =>
    everyKey(desk, layout))
