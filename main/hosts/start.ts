import { Refusal } from '../domain/refusal.ts'
import { buildDesktop, buildStale } from './build.ts'
import { findRunning } from './dataFolder.ts'
import { type Options, readOptions } from './options.ts'
import { findRuntime, startDesktop } from './startDesktop.ts'

/** Opens the window where this machine can; answers false where the browser must do. */
async function openWindow(options: Options): Promise<boolean> {
  // Opened in the browser already: point there, as a second start of the browser would.
  if ((await findRunning(options.dataDir))?.host === 'web') return false
  const runtime = findRuntime()
  if (!runtime) {
    console.log(
      'The runtime of the window (Electron) is not here and could not be fetched: opening in the browser.',
    )
    return false
  }
  await buildDesktop()
  if (await startDesktop(runtime, options)) return true
  console.log('The window could not be opened on this machine: opening in the browser.')
  return false
}

try {
  const options = readOptions(process.argv.slice(2))
  await buildStale()
  if (options.host === 'web' || !(await openWindow(options))) {
    const { startWeb } = await import('./startWeb.ts')
    await startWeb(options)
  }
} catch (error) {
  if (!(error instanceof Refusal)) throw error
  console.error(error.message)
  process.exit(2)
}
