/*
 * What the bundle gets for `electron` when plain Node runs it: the strict stand-in, which asks the app two things once
 * the window would load it, prints the answers as one line of JSON, and closes.
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
  console.log(JSON.stringify({ page: await page.text(), now: await now.json() }))
  app.quit()
}

// The real shell keeps the process alive while its window is open, and ends it itself.
const alive = setInterval(() => {
  const [status] = seen.exits
  if (status === undefined) return
  clearInterval(alive)
  if (seen.errors.length > 0) console.error(seen.errors.join('\n'))
  process.exit(status)
}, 50)
