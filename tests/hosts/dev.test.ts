import { mkdtempSync, rmSync, utimesSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { readDoor } from '../../main/hosts/web/keys.ts'
import { run } from './runStart.ts'

it('npm run dev starts the host again on a change, and the browser stays let in', {
  timeout: 120_000,
}, async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'lustrum-dev-'))
  const dev = run('main/hosts/dev.ts', ['--no-open', '--data', dataDir])
  try {
    const entrance = (await dev.says(/open at (http:\S+)/))[1]!
    const entered = await fetch(entrance)
    const headers = {
      cookie: (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '',
      'x-lustrum-door': readDoor(dataDir)?.token ?? '',
    }
    const now = new Date()
    utimesSync(fileURLToPath(new URL('../../assets/icon.svg', import.meta.url)), now, now)
    await dev.says(/open at (http:\/\/\S+?\/)\S+[\s\S]*open at \1/)
    expect((await fetch(new URL('/trpc/system.now', entrance), { headers })).status).toBe(200)
    // The host that was stopped for the second closed in good order.
    expect(dev.output()).not.toContain('not closed properly')
  } finally {
    expect(await dev.kill()).toBe(0)
    rmSync(dataDir, { recursive: true, force: true })
  }
})
