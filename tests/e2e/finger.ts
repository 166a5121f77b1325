import type { Locator, Page } from '@playwright/test'

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
