/** The live board in a real browser: what a refresh of twelve held cars costs the window, task by task. */
import { chromium } from '@playwright/test'
import { buildStale } from '../../../main/hosts/build.ts'
import { chromiumArgs, findOrInstallChromium } from '../../e2e/chromium.ts'
import { ShopServer } from '../../e2e/server.ts'
import { heldCars, heldShop } from './heldShop.ts'

const now = '2026-04-15T12:00:00Z'
const refreshes = 12
/** A frame at 60 a second. */
export const frameMs = 1000 / 60

export interface BoardCost {
  /** The longest the window's thread was held at one go in each refresh, in ms of its own computing time. */
  longest: number[]
  /** Milliseconds from the question to the answer of `board.range`, the server's share of a refresh. */
  answers: number[]
}

interface TraceEvent {
  name: string
  ph: string
  pid: number
  tid: number
  ts: number
  tdur?: number
  args?: { name?: string }
}

/** Opens the board, types in reading after reading elsewhere, and traces each refresh. Null where there is no browser. */
export async function boardCost(): Promise<BoardCost | null> {
  const executablePath = findOrInstallChromium()
  if (!executablePath) return null
  await buildStale()
  const server = new ShopServer({ now })
  const nowAt = Temporal.Instant.from(now).epochMilliseconds / 60_000
  const tokens = await heldShop(server.dataDir, nowAt)
  await server.start()
  const browser = await chromium.launch({ executablePath, args: chromiumArgs })
  try {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } })
    const answers: number[] = []
    page.on('requestfinished', request => {
      if (request.url().includes('board.range')) answers.push(request.timing().responseEnd)
    })
    await server.enter(page)
    const stays = page.getByRole('group', { name: /Bay board/ }).getByRole('button')
    await stays.nth(heldCars - 1).waitFor()
    await page.waitForTimeout(3_000)
    const longest: number[] = []
    answers.length = 0
    for (let round = 0; round < refreshes; round++) {
      await browser.startTracing(page, { categories: ['devtools.timeline', 'toplevel'] })
      const refreshed = page.waitForResponse(response => response.url().includes('board.range'))
      // Every bay reads colder than it did, so that every clock on the board moves.
      for (const token of tokens) await post(server.address, token, nowAt - 10 - round)
      await page.evaluate(typeReading, nowAt - 10 - round)
      await refreshed
      await page.waitForTimeout(700)
      longest.push(longestTask(await browser.stopTracing()))
    }
    return { longest, answers }
  } finally {
    await browser.close()
    await server.remove()
  }
}

async function post(address: string, token: string, at: number): Promise<void> {
  const readings = [{ time: at * 60, air: 12, humidity: 50 }]
  const answer = await fetch(`${address}/sensor/readings`, {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    body: JSON.stringify({ readings }),
  })
  if (!answer.ok) throw new Error(`a sensor was answered ${answer.status}`)
}

/** Somebody types a reading in another window; every board looks again. Runs inside the page. */
async function typeReading(at: number): Promise<void> {
  const asked = await fetch('/trpc/readings.now')
  const { bayId } = (await asked.json()).result.data.bays[0]
  await fetch('/trpc/readings.add', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ bayId, at, airC: 15, panelC: null, humidityPercent: 50 }),
  })
}

export function longestTask(trace: Buffer): number {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: TraceEvent[] }
  const main = new Set(
    traceEvents
      .filter(event => event.name === 'thread_name' && event.args?.name === 'CrRendererMain')
      .map(event => `${event.pid} ${event.tid}`),
  )
  const tasks = traceEvents.filter(
    event => event.ph === 'X' && event.tdur !== undefined && main.has(`${event.pid} ${event.tid}`),
  )
  return Math.max(0, ...tasks.map(event => event.tdur! / 1000))
}
