import { readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { getMailSettings, saveMailSettings, tryMail } from '../../../main/services/desk/mailSettings.ts'
import { startMailServer } from '../../outbox/mailServer.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

const settings = {
  host: '127.0.0.1',
  port: 587,
  security: 'none' as const,
  user: 'ashdown',
  password: 'Rhubarb-42',
  fromName: 'Ashdown Paint Care',
  fromAddress: 'hello@ashdown.example.com',
}

async function databaseFile(): Promise<string> {
  const rows = (await desk.store.read.$queryRawUnsafe('select file from pragma_database_list')) as {
    file: string
  }[]
  return rows[0]!.file
}

describe('the mail settings', () => {
  it('are kept, the password apart from the database in a file of this user’s alone', async () => {
    expect(await getMailSettings(desk)).toBeNull()
    const saved = await saveMailSettings(desk, settings)
    expect(saved).toEqual({
      host: '127.0.0.1',
      port: 587,
      security: 'none',
      user: 'ashdown',
      hasPassword: true,
      fromName: 'Ashdown Paint Care',
      fromAddress: 'hello@ashdown.example.com',
      version: 1,
    })
    const file = await databaseFile()
    const secrets = join(dirname(file), 'secrets.json')
    expect(readFileSync(secrets, 'utf8')).toContain('Rhubarb-42')
    expect(statSync(secrets).mode & 0o777).toBe(0o600)
    await desk.store.read.$queryRawUnsafe('pragma wal_checkpoint(full)')
    for (const end of ['', '-wal']) expect(readFileSync(file + end).includes('Rhubarb-42')).toBe(false)
  })

  it('keep the password where none is given, forget it where it is emptied, and take one edit at a time', async () => {
    const { version } = await saveMailSettings(desk, settings)
    const { password: _, ...rest } = settings
    const second = await saveMailSettings(desk, { ...rest, port: 2525, version })
    expect(second).toMatchObject({ port: 2525, hasPassword: true })
    await expect(saveMailSettings(desk, { ...rest, version })).rejects.toMatchObject({ code: 'stale' })
    expect(await saveMailSettings(desk, { ...rest, password: null, version: second.version })).toMatchObject({
      hasPassword: false,
    })
  })

  it.each([
    [{ host: 'http://mail.example.com' }, 'host'],
    [{ port: 0 }, 'port'],
    [{ fromAddress: 'nobody' }, 'fromAddress'],
    [{ fromName: '  ' }, 'fromName'],
  ])('refuse %o by its field', async (change, field) => {
    await expect(saveMailSettings(desk, { ...settings, ...change })).rejects.toMatchObject({ field })
  })

  it('are tried by a letter that really goes out', async () => {
    await expect(tryMail(desk, { to: 'me@example.com' })).rejects.toMatchObject({ code: 'mail-not-set-up' })
    const server = await startMailServer()
    await saveMailSettings(desk, { ...settings, user: null, password: null, port: server.port })
    expect(await tryMail(desk, { to: 'me@example.com' })).toMatchObject({ sent: true })
    expect(server.letters).toMatchObject([{ from: 'hello@ashdown.example.com', to: ['me@example.com'] }])
    await server.close()
    expect(await tryMail(desk, { to: 'me@example.com' })).toMatchObject({ sent: false })
  })
})
