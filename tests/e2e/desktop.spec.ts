import { mkdtempSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { _electron as electron, expect, test } from '@playwright/test'
import { buildDesktop, desktopBundle } from '../../main/hosts/build.ts'
import { runtimeIn } from '../../main/hosts/startDesktop.ts'
import { expectAccessible } from './accessible.ts'

const runtime = runtimeIn(
  dirname(createRequire(import.meta.url).resolve('electron/package.json')),
  process.env,
)
const hasDisplay = process.platform !== 'linux' || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY)

/** What this machine lacks to open the window; the same code behind it is tested in the browser either way. */
const missing = !runtime
  ? 'the runtime of Electron is not here (npx install-electron fetches it)'
  : !hasDisplay
    ? 'there is no display (xvfb-run gives one)'
    : null

test('the window opens, shows the app, keeps Node out, and closes in good order', async () => {
  if (missing) console.log(`Skipped: the window itself, since ${missing}.`)
  test.skip(missing !== null, missing ?? '')
  await buildDesktop()
  const dataDir = mkdtempSync(join(tmpdir(), 'lustrum-window-'))
  const app = await electron.launch({
    executablePath: runtime!,
    args: [...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), desktopBundle, '--data', dataDir],
  })
  try {
    const page = await app.firstWindow()
    await expect(page.getByRole('heading', { name: 'Welcome to Lustrum' })).toBeVisible()
    expect(page.url()).toBe('lustrum://app/welcome')
    const reached = await page.evaluate(() =>
      ['require', 'process', 'module'].filter(name => name in globalThis),
    )
    expect(reached).toEqual([])
    await page.evaluate(() => window.open('https://example.com/'))
    await page.evaluate(() => location.assign('https://example.com/'))
    await expect(page.getByRole('heading', { name: 'Welcome to Lustrum' })).toBeVisible()
    expect(page.url()).toBe('lustrum://app/welcome')
    expect(app.windows()).toHaveLength(1)
    await expectAccessible(page)
  } finally {
    await app.close()
    rmSync(dataDir, { recursive: true, force: true })
  }
})
