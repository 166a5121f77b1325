import { spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it, onTestFinished } from 'vitest'
import { findChromium } from '../e2e/chromium.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

function run(args: string[], env: Record<string, string> = {}) {
  return spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', env: { ...process.env, ...env } })
}

it('npm run bench refuses a name it does not know, and lists those it does', () => {
  const { status, stderr } = run(['tests/bench/run.ts', 'nonsense'])
  expect(status).toBe(2)
  expect(stderr).toMatch(/^There is no bench "nonsense": choose of [a-z, ()]+\.\n$/)
})

it('npm run test:e2e says in one line that it has no browser', () => {
  const { status, stdout, stderr } = run(['tests/e2e/run.ts'], { CHROMIUM: join(root, 'no-such-browser') })
  expect(status).toBe(2)
  expect(stdout).toBe('')
  expect(stderr).toMatch(/^End-to-end tests need a Chromium and found none: .* name it in CHROMIUM\.\n$/)
})

it('the browser is the one that was named, else the first of the system', () => {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-browser-'))
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }))
  const browser = join(dir, 'chromium')
  writeFileSync(browser, '')
  expect(findChromium({ CHROMIUM: browser })).toBeNull()
  chmodSync(browser, 0o755)
  expect(findChromium({ CHROMIUM: browser })).toBe(browser)
  expect(findChromium({ PLAYWRIGHT_CHROMIUM: browser })).toBe(browser)
  // Playwright's own comes before the system's where it was installed.
  expect(findChromium({ PATH: `/nowhere:${dir}` })).not.toBeNull()
})

it('a migration wants a name in snake case', () => {
  for (const name of [[], ['Add Lots'], ['add-lots']]) {
    const { status, stderr } = run(['prisma/newMigration.ts', ...name])
    expect(status).toBe(2)
    expect(stderr).toContain('Say what changes, in snake case: npm run db:migration -- add_lots')
  }
})
