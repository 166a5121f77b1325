import { expect, type Locator, type Page } from '@playwright/test'

interface Point {
  x: number
  y: number
}

export async function middleOf(one: Locator): Promise<Point> {
  const { x, y, width, height } = (await one.boundingBox())!
  return { x: x + width / 2, y: y + height / 2 }
}

/** A finger on the page: `drag` puts it down, draws it along and looks before it is lifted. */
export async function fingerOn(page: Page) {
  const screen = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: Point[]) =>
    screen.send('Input.dispatchTouchEvent', { type, touchPoints })
  return {
    async drag(from: Point, to: Point, beforeLifting: () => Promise<void> = async () => {}): Promise<void> {
      await touch('touchStart', [from])
      for (let i = 1; i <= 8; i++)
        await touch('touchMove', [
          { x: from.x + ((to.x - from.x) * i) / 8, y: from.y + ((to.y - from.y) * i) / 8 },
        ])
      await beforeLifting()
      await touch('touchEnd', [])
    },
  }
}

/** Taps a control as wide and high as a fingertip needs it: 44 px (WCAG 2.2, 2.5.5). */
export async function tap(control: Locator): Promise<void> {
  await control.scrollIntoViewIfNeeded()
  const { width, height } = (await control.boundingBox())!
  expect(Math.min(width, height), `${control} under a finger`).toBeGreaterThanOrEqual(44)
  await control.tap()
}
