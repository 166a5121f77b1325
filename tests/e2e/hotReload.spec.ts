import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { run, type Started } from '../hosts/runStart.ts'
import { expect, test } from './fixtures.ts'
import { Welcome } from './pages/Welcome.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

let copy: string
let dev: Started

// The files are edited for real, so they are a copy's.
test.beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'lustrum-dev-'))
  for (const part of [
    'app',
    'main',
    'prisma',
    'assets',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
  ])
    cpSync(join(root, part), join(copy, part), { recursive: true })
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'))
  dev = run('main/hosts/dev.ts', ['--no-open', '--data', join(copy, 'data')], {}, copy)
})
test.afterAll(async () => {
  await dev.kill()
  rmSync(copy, { recursive: true, force: true })
})

test('an edited screen shows without a reload, with what was typed in it; an edited service starts the host again', async ({
  page,
}) => {
  test.setTimeout(240_000)
  const entrance = (await dev.says(/open at (http:\S+)/))[1]!
  await page.goto(entrance)
  const welcome = new Welcome(page)
  await expect(page.getByRole('heading', { name: 'Welcome to Lustrum' })).toBeVisible({ timeout: 120_000 })
  await welcome.name.fill('Ashdown Paint Care')

  const screen = join(copy, 'app/screens/welcome/Welcome.tsx')
  const began = performance.now()
  // In one step, as editors save: a file read half written would make the page load again.
  writeFileSync(
    join(copy, 'edited'),
    readFileSync(screen, 'utf8').replace('Welcome to Lustrum', 'Good morning'),
  )
  renameSync(join(copy, 'edited'), screen)
  await expect(page.getByRole('heading', { name: 'Good morning' })).toBeVisible()
  console.log(`The edit showed after ${Math.round(performance.now() - began)} ms.`)
  await expect(welcome.name).toHaveValue('Ashdown Paint Care')

  const said = dev.output().length
  const clock = join(copy, 'main/hosts/clock.ts')
  writeFileSync(clock, `${readFileSync(clock, 'utf8')}\n`)
  await expect
    .poll(() => dev.output().slice(said), { timeout: 60_000 })
    .toContain(`open at ${new URL(entrance).origin}`)
  expect(dev.output()).not.toContain('not closed properly')
  await page.reload()
  await expect(page.getByRole('heading', { name: 'Good morning' })).toBeVisible({ timeout: 60_000 })
})
