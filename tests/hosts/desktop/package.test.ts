import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildDesktop, buildStale, migrationsDir } from '../../../main/hosts/build.ts'
import { extractAsar, type Packed, readAsar } from './asar.ts'

const root = fileURLToPath(new URL('../../..', import.meta.url))

// How the shell's program carries its switches (electronjs.org, "Electron Fuses"): these 32 letters, a version, their
// number, and one '0' or '1' each in a fixed order.
const sentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'
const fuses = [
  'runAsNode',
  'cookieEncryption',
  'nodeOptions',
  'nodeCliInspect',
  'asarIntegrity',
  'onlyLoadFromAsar',
  'browserSnapshot',
  'fileProtocolPrivileges',
  'wasmTrapHandlers',
]
const asDelivered = '101100011'

/** A folder that looks like the shell's runtime to the packer. */
function makeStandIn(dir: string): void {
  mkdirSync(join(dir, 'resources'), { recursive: true })
  const { version } = JSON.parse(readFileSync(join(root, 'node_modules/electron/package.json'), 'utf8')) as {
    version: string
  }
  writeFileSync(join(dir, 'version'), version)
  writeFileSync(join(dir, 'LICENSE'), 'the shell')
  const wire = Buffer.from(`${sentinel}\x01${String.fromCharCode(fuses.length)}${asDelivered}`, 'latin1')
  writeFileSync(
    join(dir, 'electron'),
    Buffer.concat([Buffer.from('#!/bin/sh\n# '), wire, Buffer.from('\n')]),
    {
      mode: 0o755,
    },
  )
}

describe('the package', () => {
  let dir = ''
  let resources = ''
  let packed: Packed[] = []
  beforeAll(async () => {
    await buildStale()
    await buildDesktop()
    dir = mkdtempSync(join(tmpdir(), 'lustrum-package-'))
    makeStandIn(join(dir, 'electron'))
    // As `npm run package`, but with the stand-in, into a folder, and nothing fetched.
    const builder = join(root, 'node_modules/electron-builder/cli.js')
    execFileSync(
      process.execPath,
      [builder, '--config', 'electron-builder.yml', '--linux', 'dir', '--x64', '--publish', 'never'].concat([
        `-c.electronDist=${join(dir, 'electron')}`,
        `-c.directories.output=${join(dir, 'out')}`,
      ]),
      { cwd: root, stdio: 'pipe' },
    )
    resources = join(dir, 'out', 'linux-unpacked', 'resources')
    packed = readAsar(join(resources, 'app.asar'))
  }, 300_000)
  afterAll(() => rmSync(dir, { recursive: true, force: true }))

  const paths = (from: string) => packed.filter(({ path }) => path.startsWith(from)).map(({ path }) => path)

  it('holds the bundle, the screens, every migration, the fonts, the words and the native modules with what they ask for, and nothing else', () => {
    const folders = new Set(packed.map(({ path }) => path.split('/').slice(0, 2).join('/')))
    expect([...folders].sort()).toEqual([
      '.build/main',
      '.build/renderer',
      'assets/fonts',
      'assets/words',
      'node_modules/@img',
      'node_modules/better-sqlite3',
      'node_modules/detect-libc',
      'node_modules/semver',
      'node_modules/sharp',
      'package.json',
    ])
    expect(paths('.build/main/migrations/')).toEqual(
      readdirSync(migrationsDir).map(name => `.build/main/migrations/${name}/migration.sql`),
    )
    expect(paths('.build/main/')).toContain('.build/main/desktop.mjs')
    expect(paths('.build/main/')).toContain('.build/main/schema_engine_bg.wasm')
    // What runs in a thread is a file of its own.
    for (const thread of ['inspectThread', 'xlsxThread', 'layThread'])
      expect(paths('.build/main/')).toContain(`.build/main/${thread}.mjs`)
    expect(paths('.build/renderer/')).toContain('.build/renderer/index.html')
    expect(packed.filter(({ path }) => /\.(map|ts|tsx)$/.test(path))).toEqual([])
  })

  it('has the native modules of its platform only, outside the archive', () => {
    const native = packed.filter(({ path }) => path.endsWith('.node'))
    expect(native.map(({ path, unpacked }) => [path, unpacked])).toEqual([
      ['node_modules/@img/sharp-linux-x64/lib/sharp-linux-x64-0.35.5.node', true],
      ['node_modules/better-sqlite3/prebuilds/linux-x64.node', true],
    ])
    for (const { path } of native) expect(existsSync(join(resources, 'app.asar.unpacked', path))).toBe(true)
  })

  // The library that reads pictures is 18 MB of it.
  it('adds less than 50 MB to the shell', () => {
    const bytes = packed.reduce((sum, { size }) => sum + size, 0)
    expect(bytes).toBeGreaterThan(5e6)
    expect(bytes).toBeLessThan(50e6)
  })

  it('starts at the bundle, and says no more of the project than it must', () => {
    const manifest = JSON.parse(
      packed
        .find(({ path }) => path === 'package.json')!
        .bytes()
        .toString(),
    ) as Record<string, unknown>
    expect(manifest).toMatchObject({ name: 'lustrum', main: '.build/main/desktop.mjs', type: 'module' })
    expect(manifest).not.toHaveProperty('scripts')
    expect(manifest).not.toHaveProperty('devDependencies')
  })

  it('is a program that runs nothing but the app', () => {
    const program = readFileSync(join(dir, 'out', 'linux-unpacked', 'lustrum'), 'latin1')
    const at = program.indexOf(sentinel) + sentinel.length + 2
    const set = Object.fromEntries(fuses.map((name, index) => [name, program[at + index] === '1']))
    expect(set).toEqual({
      runAsNode: false,
      cookieEncryption: false,
      nodeOptions: false,
      nodeCliInspect: false,
      asarIntegrity: true,
      onlyLoadFromAsar: true,
      browserSnapshot: false,
      fileProtocolPrivileges: false,
      wasmTrapHandlers: true,
    })
  })

  // Another platform's module cannot be loaded here.
  it.runIf(process.platform === 'linux' && process.arch === 'x64')(
    'runs from its own files alone: migrates, answers, closes',
    () => {
      const laid = join(dir, 'laid')
      extractAsar(join(resources, 'app.asar'), laid)
      const hook = fileURLToPath(new URL('./useStandIn.ts', import.meta.url))
      const bundle = join(laid, '.build', 'main', 'desktop.mjs')
      for (const [flags, more, start] of [
        [[], [], 'first'],
        [['--no-harmony-temporal'], [], 'again, on a V8 without Temporal'],
        [[], ['--demo'], 'a demo shop, whose floor is laid in a thread'],
      ] as const) {
        const { status, stdout, stderr } = spawnSync(
          process.execPath,
          [...flags, '--import', hook, bundle, '--data', join(dir, `data${more}`), ...more],
          { encoding: 'utf8', cwd: dir, timeout: 120_000 },
        )
        expect(stderr, start).toBe('')
        const line = stdout.split('\n').find(text => text.startsWith('{')) ?? ''
        expect(JSON.parse(line), start).toMatchObject({
          page: expect.stringContaining('<div id="root">'),
          now: { result: { data: { nowAt: expect.any(Number) } } },
          laid: more.length > 0 ? { failed: null, run: { proven: true, found: true } } : null,
        })
        expect(status, start).toBe(0)
      }
    },
  )
})
