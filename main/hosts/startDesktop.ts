import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { desktopBundle } from './build.ts'
import type { Options } from './options.ts'
import { refusedStatus, windowIsOpen } from './windowWords.ts'

/** The program file of the window's runtime inside its package's folder, if it has been fetched. */
export function runtimeIn(packageDir: string, env: NodeJS.ProcessEnv): string | null {
  let name: string
  try {
    name = readFileSync(join(packageDir, 'path.txt'), 'utf8').trim()
  } catch {
    name = 'electron'
  }
  const program = join(env.ELECTRON_OVERRIDE_DIST_PATH ?? join(packageDir, 'dist'), name)
  return existsSync(program) ? program : null
}

/** The window's runtime: where it is, or fetched where it can be; null where there is none to be had. */
export function findRuntime(env: NodeJS.ProcessEnv = process.env): string | null {
  let packageDir: string
  try {
    packageDir = dirname(createRequire(import.meta.url).resolve('electron/package.json'))
  } catch {
    return null
  }
  const present = runtimeIn(packageDir, env)
  // A runtime that was named is not looked for elsewhere.
  if (present || env.ELECTRON_OVERRIDE_DIST_PATH) return present
  spawnSync(process.execPath, [join(packageDir, 'install.js')], { stdio: 'ignore', timeout: 300_000 })
  return runtimeIn(packageDir, env)
}

/**
 * Runs the app in its window until it is closed. Answers false where the window never came up (no display, a runtime
 * that does not start), so that the browser can take its place.
 */
export async function startDesktop(runtime: string, options: Options): Promise<boolean> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env
  const flags = ['--data', options.dataDir, ...(options.demo ? ['--demo'] : [])]
  if (options.restore !== null) flags.push('--restore', options.restore)
  const child = spawn(runtime, [desktopBundle, ...flags], { env, stdio: ['ignore', 'pipe', 'inherit'] })
  let opened = false
  child.stdout.on('data', (chunk: Buffer) => {
    process.stdout.write(chunk)
    opened ||= chunk.includes(windowIsOpen)
  })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => child.kill(signal))
  const status = await new Promise<number>(resolve => {
    child.once('error', () => resolve(1))
    child.once('close', code => resolve(code ?? 1))
  })
  // Zero without a window: the app was already open, and its window has come to the front.
  if (!opened && status !== 0 && status !== refusedStatus) return false
  process.exitCode = status
  return true
}
