import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { claimDataFolder } from '../../../main/hosts/dataFolder.ts'
import { startWindow } from '../../../main/hosts/desktop/startWindow.ts'
import { firstRun } from '../../api/makeApi.ts'
import { makeShell, type ShellOptions } from './shell.ts'

const wasmPath = createRequire(import.meta.url)
  .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  .replace(/\.js$/, '.wasm')

/** A machine busy with other things is slow, not wrong. */
const patient = { timeout: 60_000 }

describe('the window', () => {
  let dir = ''
  let dataDir = ''
  let rendererDir = ''
  const open: ReturnType<typeof makeShell>[] = []

  beforeEach(() => {
    dir = mkdtempSync(join(tmpdir(), 'lustrum-window-'))
    dataDir = join(dir, 'data')
    rendererDir = join(dir, 'renderer')
    mkdirSync(join(rendererDir, 'assets'), { recursive: true })
    writeFileSync(join(rendererDir, 'index.html'), '<meta name="style-nonce" content="__NONCE__"><p>the app')
    vi.spyOn(console, 'log').mockReturnValue()
  })
  afterEach(async () => {
    for (const { shell, seen } of open.splice(0)) {
      if (seen.exits.length === 0) shell.app.quit()
      await vi.waitFor(() => expect(seen.exits).not.toEqual([]), patient)
    }
    vi.restoreAllMocks()
    rmSync(dir, { recursive: true, force: true })
  })

  /** Starts it and waits until its page is asked for, or it has ended. */
  async function start(options: ShellOptions = {}) {
    const made = makeShell(options)
    open.push(made)
    startWindow(made.shell, { dataDir, demo: false, restore: null, rendererDir, migrationsDir, wasmPath })
    await vi.waitFor(
      () => expect(made.seen.exits.length > 0 || made.seen.windows[0]?.done.includes('show')).toBe(true),
      patient,
    )
    return made
  }

  it('shows the app through its own scheme, and answers there as the web host does', async () => {
    const { seen } = await start()
    expect(seen.schemes).toEqual([
      {
        scheme: 'lustrum',
        privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true },
      },
    ])
    expect(seen.windows[0]?.done).toEqual(['load lustrum://app/', 'show'])
    const fetch = seen.handlers.get('lustrum')!
    const page = await fetch(new Request('lustrum://app/'))
    expect(page.status).toBe(200)
    expect(await page.text()).toContain('the app')
    expect(page.headers.get('content-security-policy')).toContain("default-src 'none'")
    const answer = await fetch(new Request('lustrum://app/trpc/system.now'))
    expect(await answer.json()).toMatchObject({ result: { data: { nowAt: expect.any(Number) } } })
  })

  it('answers no other page, whatever it asks', async () => {
    const { seen } = await start()
    const fetch = seen.handlers.get('lustrum')!
    const asked = (address: string, initiatorOrigin?: string | null) =>
      fetch(Object.assign(new Request(address), initiatorOrigin === undefined ? {} : { initiatorOrigin }))
    expect((await asked('lustrum://app/', 'lustrum://app')).status).toBe(200)
    expect((await asked('lustrum://elsewhere/')).status).toBe(403)
    expect((await asked('lustrum://app/trpc/system.now', 'https://example.com')).status).toBe(403)
    expect((await asked('lustrum://app/trpc/system.now', null)).status).toBe(403)
  })

  it('is a sandboxed page apart from Node, with no preload script', async () => {
    const { seen } = await start()
    expect(seen.sandboxed).toBe(true)
    const preferences = seen.windows[0]!.options.webPreferences!
    expect(preferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
    })
    expect(preferences).not.toHaveProperty('preload')
  })

  it('goes to no foreign page, opens no second window, embeds no browser', async () => {
    const { seen } = await start()
    const { web } = seen.windows[0]!
    const prevented = (name: string, url: string) => {
      let stopped = false
      web.events.emit(name, { url, preventDefault: () => (stopped = true) })
      return stopped
    }
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      expect(prevented(name, 'lustrum://app/book'), name).toBe(false)
      for (const url of [
        'https://example.com/',
        'lustrum://app.example.com/',
        'file:///etc/hosts',
        'javascript:1',
        '',
      ])
        expect(prevented(name, url), `${name} ${url}`).toBe(true)
    }
    expect(prevented('will-attach-webview', 'lustrum://app/')).toBe(true)
    expect(web.openHandler?.({ url: 'https://example.com/' } as never)).toEqual({ action: 'deny' })
    expect(web.openHandler?.({ url: 'lustrum://app/' } as never)).toEqual({ action: 'deny' })
    expect(seen.opened).toEqual([])
  })

  it('hands mail, calls and texts to the system, and nothing else', async () => {
    const { seen } = await start()
    const { web } = seen.windows[0]!
    const allowed = [
      'mailto:owner@example.com?subject=Your%20car',
      'tel:+12025550143',
      'sms:+12025550143?body=x',
    ]
    for (const url of allowed) {
      let stopped = false
      web.events.emit('will-navigate', { url, preventDefault: () => (stopped = true) })
      expect(stopped, url).toBe(true)
      expect(web.openHandler?.({ url } as never)).toEqual({ action: 'deny' })
    }
    expect(seen.opened).toEqual(allowed.flatMap(url => [url, url]))
    const refused = [
      'file:///etc/hosts',
      'https://example.com/',
      'ms-settings:',
      'javascript:1',
      'smb://example.com/x',
    ]
    for (const url of [...refused, '', 'mailto', `mailto:${'x'.repeat(20_000)}@example.com`]) {
      web.events.emit('will-navigate', { url, preventDefault: () => {} })
      expect(web.openHandler?.({ url } as never), url).toEqual({ action: 'deny' })
    }
    expect(seen.opened).toHaveLength(6)
  })

  it('asks the app itself for a document, and says in its words why there is none', async () => {
    const { seen } = await start()
    const url = 'lustrum://app/documents/label/none.pdf'
    expect(seen.windows[0]?.web.openHandler?.({ url } as never)).toEqual({ action: 'deny' })
    await vi.waitFor(() => expect(seen.errors).toEqual(['This bottle is not on the shelf.']), patient)
  })

  it('keeps a fault of the app in a log without words', async () => {
    const { seen } = await start()
    const database = new Database(join(dataDir, 'lustrum.db'))
    database.exec('pragma foreign_keys = off; alter table Bay rename to "Ansel Mirrow"')
    database.close()
    const told = vi.spyOn(console, 'error').mockReturnValue()
    const answer = await seen.handlers.get('lustrum')!(new Request('lustrum://app/trpc/bays.list'))
    expect(answer.status).toBe(500)
    expect(told).toHaveBeenCalled()
    const [line] = readFileSync(join(dataDir, 'faults.log'), 'utf8').trim().split('\n')
    expect(JSON.parse(line!)).toMatchObject({ asked: 'bays.list' })
    expect(line).not.toContain('Ansel')
  })

  it('refuses every permission but the granted ones, and those to any page but its own', async () => {
    const { seen } = await start()
    const asked = (permission: string, requestingUrl: string) => {
      const answer = vi.fn()
      seen.request?.({} as never, permission as never, answer, { requestingUrl } as never)
      expect(answer).toHaveBeenCalledTimes(1)
      const checked = seen.check?.(null, permission as never, requestingUrl, {} as never)
      expect(checked, permission).toBe(answer.mock.calls[0]?.[0])
      return checked
    }
    for (const permission of ['notifications', 'clipboard-sanitized-write', 'fullscreen']) {
      expect(asked(permission, 'lustrum://app/'), permission).toBe(true)
      expect(asked(permission, 'https://example.com/'), permission).toBe(false)
      expect(asked(permission, ''), permission).toBe(false)
    }
    for (const permission of [
      'media',
      'geolocation',
      'clipboard-read',
      'openExternal',
      'usb',
      'toString',
      'unknown',
    ])
      expect(asked(permission, 'lustrum://app/'), permission).toBe(false)
    expect(seen.device?.({} as never)).toBe(false)
  })

  it('comes to the front when it is started again', async () => {
    const { seen, appEvents } = await start()
    const window = seen.windows[0]!
    window.minimized = true
    appEvents.emit('second-instance')
    expect(window.done.slice(-3)).toEqual(['restore', 'show', 'focus'])
  })

  it('ends at once, touching nothing, where it is the second start', async () => {
    const { seen } = await start({ first: false })
    expect(seen).toMatchObject({ quits: 1, exits: [0], windows: [], errors: [] })
    expect(readdirSync(dataDir)).toEqual(['window'])
  })

  it('says where the app is open already when the browser has the data folder', async () => {
    const claim = claimDataFolder(dataDir, 'web')
    claim?.announce('http://127.0.0.1:1/enter/x')
    vi.spyOn(console, 'error').mockReturnValue()
    const { seen } = await start()
    claim?.release()
    expect(seen.windows).toEqual([])
    expect(seen.exits).toEqual([2])
    expect(seen.errors[0]).toMatch(/already open in the browser .* at http:\/\/127\.0\.0\.1:1\/enter\/x/)
  })

  it('says in words that the database is damaged', async () => {
    mkdirSync(dataDir)
    writeFileSync(join(dataDir, 'lustrum.db'), 'this is no database, whatever its name says')
    vi.spyOn(console, 'error').mockReturnValue()
    const { seen } = await start()
    expect(seen.exits).toEqual([2])
    expect(seen.errors[0]).toMatch(/lustrum\.db is damaged .* Nothing was changed/)
  })

  it('restores a copy the person chooses where the database is damaged, and says what is wrong with a bad one', async () => {
    const first = await start()
    const ask = async ({ seen }: typeof first, path: string, input?: object) => {
      const post = {
        method: 'POST',
        body: JSON.stringify(input),
        headers: { 'content-type': 'application/json' },
      }
      const asked = new Request(`lustrum://app/trpc/${path}`, input && post)
      const answer = await seen.handlers.get('lustrum')!(asked)
      return ((await answer.json()) as { result: { data: unknown } }).result.data
    }
    await ask(first, 'shop.setUp', firstRun)
    await ask(first, 'backups.make', {})
    first.shell.app.quit()
    await vi.waitFor(() => expect(first.seen.exits).toEqual([0]), patient)
    const [name] = readdirSync(join(dataDir, 'backups')).filter(name => name.endsWith('.lustrum-copy'))
    const copy = join(dataDir, 'backups', name!)
    const bad = join(dir, 'bad.lustrum-copy')
    writeFileSync(bad, readFileSync(copy).subarray(0, 2_000))
    writeFileSync(join(dataDir, 'lustrum.db'), 'this is no database, whatever its name says')
    vi.spyOn(console, 'error').mockReturnValue()
    // The first time the dialog is left without a choice.
    const again = await start({ copies: ['', bad, copy] })
    expect(again.seen.errors).toEqual([
      expect.stringMatching(/lustrum\.db is damaged/),
      expect.stringMatching(/lustrum\.db is damaged/),
      expect.stringMatching(/bad\.lustrum-copy/),
    ])
    expect(again.seen.exits).toEqual([])
    expect(await ask(again, 'shop.get')).toMatchObject({ name: firstRun.name })
  })

  it('closes the database before it ends, and comes back where it was', async () => {
    const { shell, seen } = await start()
    const window = seen.windows[0]!
    expect(readdirSync(dataDir)).toContain('running.json')
    window.events.emit('close')
    shell.app.quit()
    expect(seen.exits).toEqual([])
    await vi.waitFor(() => expect(seen.exits).toEqual([0]), patient)
    const left = readdirSync(dataDir)
    expect(left).not.toContain('running.json')
    expect(left).not.toContain('lustrum.db-wal')
    const kept = JSON.parse(readFileSync(join(dataDir, 'window', 'window.json'), 'utf8')) as unknown
    expect(kept).toEqual({ bounds: { x: 10, y: 20, width: 1366, height: 820 }, maximized: false })

    const again = await start()
    expect(again.seen.windows[0]?.options).toMatchObject({ x: 10, y: 20, width: 1366, height: 820 })
  })
})
