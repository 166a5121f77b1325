import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'

/** The shell is the same engine without the browser's own windows, which cost a quarter of every page. */
const names = ['chromium-headless-shell', 'chromium', 'chromium-browser'].concat([
  'google-chrome-stable',
  'google-chrome',
  'chrome',
])

function runnable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/**
 * A browser for the end-to-end tests: the one CHROMIUM (or PLAYWRIGHT_CHROMIUM) names, else Playwright's own, else
 * the system's. Null where there is none.
 */
export function findChromium(env: NodeJS.ProcessEnv = process.env): string | null {
  const named = env.CHROMIUM ?? env.PLAYWRIGHT_CHROMIUM
  if (named) return runnable(named) ? named : null
  const own = chromium.executablePath()
  if (own && existsSync(own)) return own
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean)
  return folders.flatMap(folder => names.map(name => join(folder, name))).find(runnable) ?? null
}

/** Finds a browser, or has Playwright fetch its own where the machine can reach one. */
export function findOrInstallChromium(env: NodeJS.ProcessEnv = process.env): string | null {
  const found = findChromium(env)
  if (found || env.CHROMIUM || env.PLAYWRIGHT_CHROMIUM) return found
  const cli = fileURLToPath(new URL('../../node_modules/@playwright/test/cli.js', import.meta.url))
  spawnSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'ignore', timeout: 240_000 })
  return findChromium(env)
}

/** What a headless browser is started with here; without a sandbox only where root leaves it none. */
export const chromiumArgs = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]
