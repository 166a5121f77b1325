import { migrationsDir, rendererDir } from './build.ts'
import { claimDataFolder, readRunning } from './dataFolder.ts'
import { openBrowser } from './openBrowser.ts'
import { openShop } from './openShop.ts'
import type { Options } from './options.ts'
import { startOutbox } from './outboxTimer.ts'
import { readDoorKeys } from './web/guard.ts'
import { serveWeb } from './web/serve.ts'

/** Serves the app in the browser until told to stop, or points to the one that already serves this data folder. */
export async function startWeb(options: Options): Promise<void> {
  const claim = claimDataFolder(options.dataDir, 'web')
  if (!claim) return pointToRunning(options)
  // Told to stop while still starting, it finishes that first: half a start is harder to close than a whole one.
  const toStop = new Promise<void>(resolve => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve())
  })
  const desk = await openShop(claim, {
    dataDir: options.dataDir,
    demo: options.demo,
    migrations: { dir: migrationsDir },
    say: words => console.log(words),
  })
  const web = await serveWeb({
    desk,
    rendererDir,
    port: options.port,
    keys: readDoorKeys(process.env),
    onFault: error => console.error(error),
  }).catch(async error => {
    await desk.store.close()
    claim.release()
    throw error
  })
  claim.announce(web.entrance)
  const stopOutbox = startOutbox(desk, error => console.error(error))
  console.log(`Lustrum is open at ${web.entrance}`)
  if (options.open) openBrowser(web.entrance)

  await toStop
  await web.close()
  await stopOutbox()
  await desk.store.close()
  claim.release()
  process.exit(0)
}

async function pointToRunning(options: Options): Promise<void> {
  const running = await readRunning(options.dataDir)
  if (running?.entrance) {
    console.log(`Lustrum is already open at ${running.entrance}`)
    if (options.open) openBrowser(running.entrance)
    return
  }
  console.error(
    running?.host === 'desktop'
      ? `Lustrum is already open in its own window with the data folder ${options.dataDir}: use that window, close it first, or name another folder with --data.`
      : `Lustrum is already starting with the data folder ${options.dataDir}: try again in a moment.`,
  )
  process.exitCode = 2
}
