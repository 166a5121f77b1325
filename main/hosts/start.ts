import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { Refusal } from '../domain/refusal.ts'
import { buildStale, migrationsDir, rendererDir } from './build.ts'
import { startClock } from './clock.ts'
import { openBrowser } from './openBrowser.ts'
import { type Options, readOptions } from './options.ts'
import { findRunning, markRunning } from './runningMark.ts'

/** Serves the app in the browser until told to stop. */
async function startWeb(options: Options): Promise<void> {
  const { openStore } = await import('../store/store.ts')
  const { serveWeb } = await import('./web/serve.ts')
  mkdirSync(options.dataDir, { recursive: true })
  const store = await openStore(join(options.dataDir, 'lustrum.db'), { dir: migrationsDir })
  const desk = { store, now: startClock(process.env), who: 'front desk' }
  const web = await serveWeb(desk, rendererDir, options.port, error => console.error(error))
  const unmark = markRunning(options.dataDir, { pid: process.pid, host: 'web', entrance: web.entrance })
  console.log(`Lustrum is open at ${web.entrance}`)
  if (options.open) openBrowser(web.entrance)
  const stop = async () => {
    unmark()
    await web.close()
    await store.close()
    process.exit(0)
  }
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
}

try {
  const options = readOptions(process.argv.slice(2))
  const running = await findRunning(options.dataDir)
  if (running?.entrance) {
    console.log(`Lustrum is already open at ${running.entrance}`)
    if (options.open) openBrowser(running.entrance)
    process.exit(0)
  }
  await buildStale()
  await startWeb(options)
} catch (error) {
  if (!(error instanceof Refusal)) throw error
  console.error(error.message)
  process.exit(2)
}
