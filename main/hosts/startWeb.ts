import { say } from '../domain/language/index.ts'
import { speaking, systemLanguage } from '../services/desk/speaking.ts'
import { startBackups } from './backupTimer.ts'
import { migrationsDir, rendererDir } from './build.ts'
import { claimDataFolder, readRunning } from './dataFolder.ts'
import { faultTeller } from './faultTeller.ts'
import { startFollowing } from './followTimer.ts'
import { forgetPage, openBrowser } from './openBrowser.ts'
import { openShop } from './openShop.ts'
import type { Options } from './options.ts'
import { startOutbox } from './outboxTimer.ts'
import { askEntrance } from './web/entrances.ts'
import { keepDoor, readDoor } from './web/keys.ts'
import { type Screens, serveAgain } from './web/serve.ts'

/** Serves the app in the browser until told to stop, or points to the one that already serves this data folder. */
export async function startWeb(options: Options, screens: Screens = { rendererDir }): Promise<void> {
  const claim = claimDataFolder(options.dataDir, 'web')
  if (!claim) return speaking(systemLanguage(), () => pointToRunning(options))
  // Told to stop while still starting, it finishes that first: half a start is harder to close than a whole one.
  const toStop = new Promise<void>(resolve => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve())
  })
  const desk = await speaking(systemLanguage(), () =>
    openShop(claim, {
      dataDir: options.dataDir,
      demo: options.demo,
      restore: options.restore,
      migrations: { dir: migrationsDir },
      say: words => console.log(words),
    }),
  )
  const onFault = faultTeller(desk)
  const web = await serveAgain(readDoor(options.dataDir), {
    desk,
    screens,
    port: options.port,
    onFault,
    onEntered: () => forgetPage(options.dataDir),
  }).catch(async error => {
    await desk.store.close()
    claim.release()
    throw error
  })
  keepDoor(options.dataDir, { ...web.keys, port: web.port })
  claim.announce(`http://127.0.0.1:${web.port}`)
  const stopFollowing = startFollowing(desk, onFault)
  const stopOutbox = startOutbox(desk, onFault)
  const stopBackups = startBackups(desk, onFault)
  const entrance = web.entrance()
  console.log(speaking(systemLanguage(), () => say('Lustrum is open at {entrance}', { entrance })))
  if (options.open) openBrowser(options.dataDir, entrance)

  await toStop
  await web.close()
  await Promise.all([stopFollowing(), stopOutbox(), stopBackups()])
  await desk.store.close()
  forgetPage(options.dataDir)
  claim.release()
  process.exit(0)
}

async function pointToRunning(options: Options): Promise<void> {
  const running = await readRunning(options.dataDir)
  const entrance = running?.address ? await askEntrance(options.dataDir) : null
  if (entrance) {
    console.log(say('Lustrum is already open at {entrance}', { entrance }))
    if (options.open) openBrowser(options.dataDir, entrance)
    return
  }
  console.error(
    running?.host === 'desktop'
      ? say(
          'Lustrum is already open in its own window with the data folder {dataDir}: use that window, close it first, or name another folder with --data.',
          { dataDir: options.dataDir },
        )
      : say('Lustrum is already starting with the data folder {dataDir}: try again in a moment.', {
          dataDir: options.dataDir,
        }),
  )
  process.exitCode = 2
}
