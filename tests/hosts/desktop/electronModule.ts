/*
 * What the bundle gets for `electron` when plain Node runs it: the strict stand-in, which asks the app two things once
 * the window would load it, prints the answers as one line of JSON, and closes. In a demo shop it also has the floor laid,
 * which is done in a thread.
 */
import { makeShell } from './shell.ts'

const { shell: whole, seen } = makeShell({
  packaged: true,
  onLoad: address => void report(address),
})

export const { app, BrowserWindow, dialog, Menu, protocol, screen, session, shell } = whole

async function report(address: string): Promise<void> {
  const fetch = seen.handlers.get('lustrum')!
  const page = await fetch(new Request(address))
  const now = await fetch(new Request(`${address}trpc/system.now`))
  const laid = process.argv.includes('--demo') ? await layFloor(address) : null
  console.log(JSON.stringify({ page: await page.text(), now: await now.json(), laid }))
  app.quit()
}

const days = 7

/** Begins to lay the floor, and waits until that is proven or has failed. */
async function layFloor(address: string): Promise<unknown> {
  const fetch = seen.handlers.get('lustrum')!
  const headers = { 'content-type': 'application/json' }
  const body = JSON.stringify({ days })
  const begun = await fetch(new Request(`${address}trpc/dayPlan.begin`, { method: 'POST', headers, body }))
  if (!begun.ok) return begun.json()
  for (;;) {
    const asked = new Request(`${address}trpc/dayPlan.relay?input=${encodeURIComponent(body)}`)
    const { result } = await (await fetch(asked)).json()
    if (result.data.failed !== null || !result.data.run.working) return result.data
    await new Promise(resolve => setTimeout(resolve, 50))
  }
}

// The real shell keeps the process alive while its window is open, and ends it itself.
const alive = setInterval(() => {
  const [status] = seen.exits
  if (status === undefined) return
  clearInterval(alive)
  if (seen.errors.length > 0) console.error(seen.errors.join('\n'))
  process.exit(status)
}, 50)
