import { mkdirSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { takeLock } from '../../main/store/fileLock.ts'
import { checkIntegrity } from '../../main/store/integrity.ts'
import { migrate } from '../../main/store/migrate.ts'
import { openStore } from '../../main/store/store.ts'
import { makeFolder } from './openDatabase.ts'

const now = { dir: migrationsDir }
const damaged = {
  code: 'database-damaged',
  message: expect.stringMatching(/is damaged .* Nothing was changed\. Put a copy/),
}

async function makeFull(): Promise<string> {
  const file = join(makeFolder(), 'lustrum.db')
  await migrate(file, now)
  const database = new Database(file)
  const insert = database.prepare("insert into Bay (id, name, position, capabilities) values (?, ?, ?, '[]')")
  database.transaction(() => {
    for (let i = 0; i < 2_000; i++) insert.run(`bay-${i}`, 'x'.repeat(200), i)
  })()
  database.close()
  return file
}

function thrown(work: () => void): unknown {
  try {
    work()
  } catch (error) {
    return error
  }
}

describe('a database that is looked over', () => {
  it('is sound as the app leaves it, and so is none at all', async () => {
    checkIntegrity(await makeFull())
    checkIntegrity(join(makeFolder(), 'none.db'))
  })

  it('is called damaged where a page of it was overwritten', async () => {
    const file = await makeFull()
    const size = readFileSync(file).length
    const handle = openSync(file, 'r+')
    writeSync(handle, Buffer.alloc(4096, 0xff), 0, 4096, Math.floor(size / 2 / 4096) * 4096)
    expect(thrown(() => checkIntegrity(file))).toMatchObject(damaged)
  })

  it('is called damaged where it was cut short', async () => {
    const file = await makeFull()
    writeFileSync(file, readFileSync(file).subarray(0, 20_000))
    expect(thrown(() => checkIntegrity(file))).toMatchObject(damaged)
  })

  it('is called damaged where a row belongs to nothing', async () => {
    const file = await makeFull()
    const database = new Database(file)
    database.pragma('foreign_keys = off')
    database.exec("insert into BayClosure (id, bayId, fromAt, toAt) values ('c', 'no such bay', 1, 2)")
    database.close()
    expect(thrown(() => checkIntegrity(file))).toMatchObject({
      ...damaged,
      message: expect.stringContaining('a row of BayClosure belongs to no Bay'),
    })
  })

  it('is not opened where it is no database at all', async () => {
    const file = join(makeFolder(), 'lustrum.db')
    const text = 'a letter saved under the wrong name, long enough to look like a header of some kind'
    writeFileSync(file, text)
    await expect(openStore(file, now)).rejects.toMatchObject(damaged)
    expect(readFileSync(file, 'utf8')).toBe(text)
  })

  it('is said to be out of reach where it cannot be opened', async () => {
    const file = join(makeFolder(), 'lustrum.db')
    mkdirSync(file)
    await expect(openStore(file, now)).rejects.toMatchObject({
      code: 'database-unreachable',
      message: expect.stringContaining("look at the folder's rights and free space"),
    })
  })
})

describe('the lock of a folder', () => {
  it('is held by one at a time, and can be taken again once given back', () => {
    const file = join(makeFolder(), 'lock.db')
    const first = takeLock(file)
    expect(first).not.toBeNull()
    expect(takeLock(file)).toBeNull()
    first?.()
    const second = takeLock(file)
    expect(second).not.toBeNull()
    second?.()
  })
})
