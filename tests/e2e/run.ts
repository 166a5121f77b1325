import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { findOrInstallChromium } from './chromium.ts'

const file = (path: string) => fileURLToPath(new URL(path, import.meta.url))

const browser = findOrInstallChromium()
if (!browser) {
  console.error(
    'End-to-end tests need a Chromium and found none: install one (Debian: apt-get install chromium-headless-shell) or name it in CHROMIUM.',
  )
  process.exit(2)
}
const cli = file('../../node_modules/@playwright/test/cli.js')
const run = spawnSync(
  process.execPath,
  [cli, 'test', '--config', file('playwright.config.ts'), ...process.argv.slice(2)],
  { stdio: 'inherit', env: { ...process.env, CHROMIUM: browser } },
)
process.exit(run.status ?? 1)
