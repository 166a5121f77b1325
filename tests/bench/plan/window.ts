import { setTimeout as after } from 'node:timers/promises'
import { chromium } from '@playwright/test'
import type { RelayTask } from '../../../main/domain/relay/index.ts'
import { buildStale } from '../../../main/hosts/build.ts'
import { layBeside } from '../../../main/services/dayPlan/layBeside.ts'
import { ownPace } from '../../../main/services/desk/beside.ts'
import { chromiumArgs, findOrInstallChromium } from '../../e2e/chromium.ts'
import { ShopServer } from '../../e2e/server.ts'
import { letIn } from '../../hosts/letIn.ts'
import { longestTask } from '../cure/board.ts'
import type { Figure } from '../run.ts'
import { figure } from './timed.ts'
import { inventedWeek } from './week.ts'

const now = '2026-04-15T13:40:00Z'
const goals = { stopMs: 100, heldMs: 50 }
const stops = 12
const layings = 5
const days = 31

/** What somebody at the window feels while the floor is laid: how soon a stop is obeyed, and how long anything waits. */
export async function* atTheWindow(): AsyncGenerator<Figure> {
  const took = await stopTimes()
  const longest = Math.max(...took)
  yield figure(
    `stopped while 80 cars are laid, longest of ${stops}`,
    longest,
    'ms',
    `under ${goals.stopMs} ms`,
    longest < goals.stopMs,
  )
  const felt = await whileLaying()
  if (!felt) {
    yield figure('the window while the floor is laid was not looked at: no browser was found', 0, 'count')
    return
  }
  for (const [what, ms] of Object.entries(felt)) {
    const [goal, met] = what.startsWith('stop')
      ? [`under ${goals.stopMs} ms`, ms < goals.stopMs]
      : [`at most ${goals.heldMs} ms`, ms <= goals.heldMs]
    yield figure(what, ms, 'ms', goal, met)
  }
}

/** From the stop asked for to the thread's end, in the middle of a search that takes much longer. */
async function stopTimes(): Promise<number[]> {
  const floor = inventedWeek(80, 1)
  const task: RelayTask = { floor, present: {} }
  const took: number[] = []
  for (let i = 0; i < stops; i++) {
    let asked = false
    const pace = { ...ownPace(), turn: () => Promise.resolve(!asked) }
    const laying = layBeside(task, pace, () => {})
    await after(300 + 100 * i)
    asked = true
    const start = performance.now()
    await laying
    took.push(performance.now() - start)
  }
  return took
}

/** The demo's next week laid from its own screen, while somebody else asks small questions without a pause. */
async function whileLaying(): Promise<Record<string, number> | null> {
  const executablePath = findOrInstallChromium()
  if (!executablePath) return null
  await buildStale()
  const server = new ShopServer({ now, demo: true })
  await server.start()
  const other = await letIn(server)
  const browser = await chromium.launch({ executablePath, args: chromiumArgs })
  try {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } })
    await server.enter(page, '/plan/relay')
    const begin = page.getByRole('button', { name: /^Look (for a better plan|again)$/ })
    let [held, waited, stopped] = [0, 0, 0]
    for (let i = 0; i <= layings; i++) {
      await begin.waitFor()
      await browser.startTracing(page, { categories: ['devtools.timeline', 'toplevel'] })
      const [asked] = await Promise.all([longestWait(other), begin.click()])
      const task = longestTask(await browser.stopTracing())
      await other.mutate('dayPlan.begin', { days })
      await after(100)
      const start = performance.now()
      await other.mutate('dayPlan.stop', {})
      const stop = performance.now() - start
      // The first is not counted: the code is warm after the first minutes of a day.
      if (i === 0) continue
      held = Math.max(held, task)
      waited = Math.max(waited, asked)
      stopped = Math.max(stopped, stop)
    }
    return {
      'longest the window was held while the floor is laid, computing': held,
      'longest wait for an answer meanwhile': waited,
      'stop, from the window to its answer': stopped,
    }
  } finally {
    await browser.close()
    await server.remove()
  }
}

/** The longest wait for the answer to a small question, from now until the next laying has ended. */
async function longestWait({ query }: Awaited<ReturnType<typeof letIn>>): Promise<number> {
  const before = (await query('dayPlan.relay', { days })).run?.runId
  let longest = 0
  for (;;) {
    const start = performance.now()
    await query('system.now', {})
    longest = Math.max(longest, performance.now() - start)
    const { run } = await query('dayPlan.relay', { days })
    if (run && run.runId !== before && !run.working) return longest
  }
}
