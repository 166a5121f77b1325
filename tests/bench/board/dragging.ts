/** The week of a full board in a real browser while a stay is dragged over it: frames, and what each costs the window. */
import { chromium, type Page } from '@playwright/test'
import { buildStale } from '../../../main/hosts/build.ts'
import { chromiumArgs, findOrInstallChromium } from '../../e2e/chromium.ts'
import { middleOf } from '../../e2e/drag.ts'
import { ShopServer } from '../../e2e/server.ts'
import { fillTwelveBays, twelveBaysNow } from '../../e2e/shops/twelveBays.ts'
import { longestTask } from '../cure/board.ts'
import { fiveAWeek } from './bookedStays.ts'

/** Five visits a week in each of twelve bays. */
export const draggedStays = 60
const moves = 240

export interface DraggingCost {
  /** The longest the window's thread was held at one go, in ms of its own computing time. */
  longestMs: number
  framesPerS: number
}

/** Carries a stay to and fro across the week, a move every frame. Null where there is no browser. */
export async function draggingCost(): Promise<DraggingCost | null> {
  const executablePath = findOrInstallChromium()
  if (!executablePath) return null
  await buildStale()
  const server = new ShopServer({ now: twelveBaysNow })
  await server.start()
  const browser = await chromium.launch({ executablePath, args: chromiumArgs })
  try {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } })
    await fillTwelveBays(page, server, draggedStays, fiveAWeek)
    await server.enter(page)
    await page.getByText('Week', { exact: true }).click()
    const stays = page.getByRole('group', { name: /Bay board/ }).getByRole('button')
    await stays.nth(draggedStays - 1).waitFor()
    // Booked for Friday: those of today are being washed and stay where they are.
    const from = await middleOf(stays.nth(draggedStays / 2))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    // The code is warm after the first minutes of a day.
    await across(page, from, 60)
    if (!(await page.getByTestId('board-status').textContent())) throw new Error('nothing is dragged')
    await browser.startTracing(page, { categories: ['devtools.timeline', 'toplevel'] })
    const frames = page.evaluate(countFrames, (moves * 1_000) / 60)
    await across(page, from, moves)
    const framesPerS = await frames
    const longestMs = longestTask(await browser.stopTracing())
    await page.keyboard.press('Escape')
    await page.mouse.up()
    return { longestMs, framesPerS }
  } finally {
    await browser.close()
    await server.remove()
  }
}

/** Moves the mouse over all bays and most of the week, as fast as the page takes it. */
async function across(page: Page, from: { x: number; y: number }, count: number): Promise<void> {
  for (let i = 0; i < count; i++)
    await page.mouse.move(from.x + 500 * Math.sin(i / 20), from.y + 200 * Math.sin(i / 13))
}

/** How many frames a second the page draws for as long as this. Runs inside the page. */
function countFrames(forMs: number): Promise<number> {
  return new Promise(resolve => {
    let [first, count] = [0, 0]
    const frame = (at: number) => {
      first ||= at
      if (at - first >= forMs) return resolve((count * 1_000) / (at - first))
      count++
      requestAnimationFrame(frame)
    }
    requestAnimationFrame(frame)
  })
}
