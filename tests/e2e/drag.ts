import type { Locator } from '@playwright/test'

interface Point {
  x: number
  y: number
}

/** Where a control is taken hold of. */
export async function middleOf(target: Locator): Promise<Point> {
  await target.scrollIntoViewIfNeeded()
  const box = await target.boundingBox()
  if (!box) throw new Error('What is to be dragged is not on the screen.')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

const between = (from: Point, to: Point, count = 6): Point[] =>
  Array.from({ length: count }, (_, i) => ({
    x: from.x + ((to.x - from.x) * (i + 1)) / count,
    y: from.y + ((to.y - from.y) * (i + 1)) / count,
  }))

/** Drags with the mouse, in small moves as a hand makes them. */
export async function dragByMouse(target: Locator, to: Point): Promise<void> {
  const { mouse } = target.page()
  const from = await middleOf(target)
  await mouse.move(from.x, from.y)
  await mouse.down()
  for (const { x, y } of between(from, to)) await mouse.move(x, y)
  await mouse.up()
}

/** The same with a finger; the page must have been opened with `hasTouch`. */
export async function dragByFinger(target: Locator, to: Point): Promise<void> {
  const page = target.page()
  const from = await middleOf(target)
  const screen = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: Point[]) =>
    screen.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [from])
  for (const point of between(from, to)) await touch('touchMove', [point])
  await touch('touchEnd', [])
  await screen.detach()
}
