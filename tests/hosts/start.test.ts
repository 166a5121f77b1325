import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { claimDataFolder } from '../../main/hosts/dataFolder.ts'
import { runStart, type Started } from './runStart.ts'

/** What of this folder somebody else on the computer may read or enter. */
function openToOthers(dir: string): string[] {
  const names = ['', ...readdirSync(dir, { recursive: true }).map(String)]
  return names.filter(name => (statSync(join(dir, name)).mode & 0o077) !== 0)
}

describe('npm start', { timeout: 120_000 }, () => {
  let dir = ''
  let dataDir = ''
  const started: Started[] = []
  beforeEach(() => {
    dir = mkdtempSync(join(tmpdir(), 'lustrum-start-'))
    dataDir = join(dir, 'data')
  })
  afterEach(async () => {
    for (const one of started.splice(0)) await one.kill('SIGKILL')
    rmSync(dir, { recursive: true, force: true })
  })

  function start(host: 'web' | 'desktop', env: Record<string, string> = {}, more: string[] = []): Started {
    const one = runStart(['--host', host, '--no-open', '--data', dataDir, ...more], env)
    started.push(one)
    return one
  }
  const address = async (one: Started) => (await one.says(/open at (http:\S+)/))[1]!
  const answers = async (entrance: string) => (await fetch(entrance)).status

  /** A runtime of the window that is a script: what it does stands for what the real one would. */
  function fakeRuntime(script: string): Record<string, string> {
    const dist = join(dir, 'runtime')
    mkdirSync(dist)
    writeFileSync(join(dist, 'electron'), `#!/bin/sh\n${script}\n`)
    chmodSync(join(dist, 'electron'), 0o755)
    return { ELECTRON_OVERRIDE_DIST_PATH: dist }
  }

  it('serves until told to stop, then leaves nothing open behind', async () => {
    const first = start('web')
    expect(await answers(await address(first))).toBe(200)
    expect(statSync(join(dataDir, 'running.json')).mode & 0o777).toBe(0o600)
    expect(openToOthers(dataDir)).toEqual([])
    expect(await first.kill('SIGTERM')).toBe(0)
    expect(existsSync(join(dataDir, 'running.json'))).toBe(false)
    expect(existsSync(join(dataDir, 'lustrum.db-wal'))).toBe(false)

    const again = start('web')
    await address(again)
    expect(again.output()).not.toContain('not closed properly')
    expect(await again.kill('SIGINT')).toBe(0)
  })

  it('closes to others a folder and a database that were there, and leaves alone what is not its own', async () => {
    const first = start('web')
    await address(first)
    await first.kill()
    mkdirSync(join(dataDir, 'before-migration'), { recursive: true })
    writeFileSync(join(dataDir, 'before-migration', 'lustrum.db'), '')
    writeFileSync(join(dataDir, 'holiday.txt'), '')
    for (const name of ['', 'before-migration']) chmodSync(join(dataDir, name), 0o755)
    for (const name of ['lustrum.db', 'door.json', 'before-migration/lustrum.db', 'holiday.txt'])
      chmodSync(join(dataDir, name), 0o644)
    await address(start('web'))
    expect(openToOthers(dataDir)).toEqual(['holiday.txt'])
  })

  it('opens the browser by a file of the user’s own, with no secret on a command line', async () => {
    const bin = join(dir, 'bin')
    mkdirSync(bin)
    const told = join(dir, 'told')
    writeFileSync(
      join(bin, 'xdg-open'),
      `#!/bin/sh\necho "$@" > ${told}.new; cat "$1" >> ${told}.new; mv ${told}.new ${told}\n`,
    )
    chmodSync(join(bin, 'xdg-open'), 0o755)
    const one = runStart(['--host', 'web', '--data', dataDir], { PATH: `${bin}:${process.env.PATH}` })
    started.push(one)
    const entrance = await address(one)
    await expect.poll(() => existsSync(told)).toBe(true)
    const [command, page] = readFileSync(told, 'utf8').split('\n')
    expect(command).toBe(join(dataDir, 'open.html'))
    expect(page).toContain(`url=${entrance}"`)
    expect(statSync(join(dataDir, 'open.html')).mode & 0o777).toBe(0o600)
    expect(await answers(entrance)).toBe(200)
    expect(existsSync(join(dataDir, 'open.html'))).toBe(false)
  })

  it('points a second start to the first, for the browser and the window alike', async () => {
    const entrance = await address(start('web'))
    expect(await answers(entrance)).toBe(200)
    for (const host of ['web', 'desktop'] as const) {
      const second = start(host)
      expect(await second.ends(), host).toBe(0)
      const again = await address(second)
      expect(new URL(again).origin).toBe(new URL(entrance).origin)
      // The first has been used; each start gets one of its own.
      expect(await answers(entrance), host).toBe(401)
      expect(await answers(again), host).toBe(200)
    }
  })

  it('takes over from one that was killed, and looks the database over first', async () => {
    const first = start('web')
    const entrance = await address(first)
    await first.kill('SIGKILL')
    expect(existsSync(join(dataDir, 'running.json'))).toBe(true)
    const second = start('web')
    const again = await address(second)
    expect(again).not.toBe(entrance)
    // Open windows go on: the app is where it was.
    expect(new URL(again).origin).toBe(new URL(entrance).origin)
    expect(second.output()).toMatch(/not closed properly last time.*\nThe database is sound\./)
  })

  it('opens nothing on a database that did not survive, and says what to do', async () => {
    const first = start('web')
    await address(first)
    await first.kill('SIGKILL')
    for (const end of ['', '-wal', '-shm']) rmSync(join(dataDir, `lustrum.db${end}`), { force: true })
    writeFileSync(join(dataDir, 'lustrum.db'), Buffer.alloc(8192, 'x'))
    for (const attempt of ['first', 'second']) {
      const next = start('web')
      expect(await next.ends(), attempt).toBe(2)
      expect(next.output()).toMatch(/lustrum\.db is damaged .* Nothing was changed\. Put a copy of it back/)
    }
  })

  it('says so where the window has the data folder', async () => {
    const claim = claimDataFolder(dataDir, 'desktop')
    const second = start('web')
    expect(await second.ends()).toBe(2)
    expect(second.output()).toMatch(
      /already open in its own window .* close it first, or name another folder/,
    )
    claim?.release()
  })

  it('opens the browser, saying why in one line, where there is no runtime for the window', async () => {
    const one = start('desktop', { ELECTRON_OVERRIDE_DIST_PATH: dir })
    expect(await answers(await address(one))).toBe(200)
    expect(one.output()).toMatch(
      /^The runtime of the window \(Electron\) is not here.*\nLustrum is open at \S+\n$/,
    )
  })

  it('hands the data folder to the window, and ends with it', async () => {
    const one = start('desktop', fakeRuntime('echo "$@"; echo Lustrum is open in its window'), ['--demo'])
    expect(await one.ends()).toBe(0)
    expect(one.output()).toContain(`desktop.mjs --data ${dataDir} --demo\n`)
    expect(one.output()).not.toContain('browser')
  })

  it('opens the browser where the window does not come up', async () => {
    const one = start('desktop', fakeRuntime('echo no display >&2; exit 1'))
    expect(await answers(await address(one))).toBe(200)
    expect(one.output()).toContain('The window could not be opened on this machine: opening in the browser.')
  })

  it('does not, where the window has said why it refuses', async () => {
    const one = start('desktop', fakeRuntime('echo The database is damaged >&2; exit 2'))
    expect(await one.ends()).toBe(2)
    expect(one.output().trim()).toBe('The database is damaged')
  })

  it('refuses a port that is taken, naming it, and lets go of the folder', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await new Promise(resolve => other.once('listening', resolve))
    const { port } = other.address() as { port: number }
    const one = start('web', {}, ['--port', String(port)])
    expect(await one.ends()).toBe(2)
    expect(one.output()).toContain(`Port ${port} is in use`)
    expect(existsSync(join(dataDir, 'running.json'))).toBe(false)
    other.close()
  })

  it('refuses a data folder it cannot make', async () => {
    writeFileSync(dataDir, 'a file')
    const one = start('web')
    expect(await one.ends()).toBe(2)
    expect(one.output()).toMatch(/^The data folder .* cannot be written .* name another with --data\.\n$/)
  })

  it('fills an empty database with the demo shop, and only an empty one', async () => {
    const first = start('web', {}, ['--demo'])
    await address(first)
    expect(first.output()).not.toContain('already holds a shop')
    await first.kill()
    const second = start('web', {}, ['--demo'])
    await address(second)
    expect(second.output()).toContain('already holds a shop: --demo changed nothing')
  })
})
