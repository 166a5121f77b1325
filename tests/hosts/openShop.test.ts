import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { copyAtOnce } from '../../main/services/backup/copying.ts'
import { saveCopiesSettings } from '../../main/services/backup/settings.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { erasePerson } from '../../main/services/leaving/erase.ts'

import { makeShopFolder, names, type ShopFolder } from './shopFolder.ts'

let on: ShopFolder
beforeEach(() => {
  on = makeShopFolder()
})
afterEach(() => on.remove())

describe('a person erased after a copy was made', () => {
  const erase = async (desk: Desk) => {
    const { id, version } = await desk.store.read.customer.findFirstOrThrow({ where: { name: 'Aalto' } })
    await erasePerson(desk, { id, version, accepted: true })
  }

  it('is erased again when that copy is restored, here and on another computer', async () => {
    const { copy } = await on.usedFolder()
    const place = join(on.dir, 'place')
    mkdirSync(place)
    const desk = await on.start()
    await saveCopiesSettings(desk, { place, version: 0 })
    // Of one hour the last copy is kept.
    const aside = join(on.dir, 'older.lustrum-copy')
    copyFileSync(copy, aside)
    await erase(desk)
    // Carried with the next copy.
    await copyAtOnce(desk)
    const older = join(place, 'older.lustrum-copy')
    copyFileSync(aside, older)
    await on.running!.close()
    for (const folder of [on.dataDir, join(on.dir, 'another')]) {
      on.dataDir = folder
      on.said = []
      expect(await names(await on.start(older))).toContain('erased person')
      expect(on.said.at(-1)).toBe('Erased before, and back with an older copy, was erased again: 1.')
      await on.running!.close()
    }
    const list = readFileSync(join(place, 'lustrum-erased.json'), 'utf8')
    expect(Object.keys(JSON.parse(list))).toHaveLength(1)
    expect(list).not.toContain('Aalto')
  })

  it('is listed at the next start where the list was lost', async () => {
    await on.usedFolder()
    await erase(await on.start())
    await on.running!.close()
    const list = join(on.dataDir, 'backups', 'lustrum-erased.json')
    const before = readFileSync(list, 'utf8')
    writeFileSync(list, 'damaged')
    await on.start()
    expect(readFileSync(list, 'utf8')).toBe(before)
    expect(on.said).toEqual([])
  })
})

describe('the key that proves certificates', () => {
  const keys = () => readdirSync(join(on.dataDir, 'keys'))

  it('is there after the first start, stays the same, and goes into the first copy', async () => {
    await on.start()
    const [key] = keys()
    expect(key).toMatch(/^signing-[\w-]{8}\.json$/)
    await on.running!.close()
    const { copy } = await on.usedFolder()
    expect(keys()).toEqual([key])
    on.dataDir = join(on.dir, 'another')
    await on.start(copy)
    expect(keys()).toContain(key)
  })

  it('keeps nobody out where it cannot be read', async () => {
    await on.start()
    await on.running!.close()
    writeFileSync(join(on.dataDir, 'keys', keys()[0]!), 'damaged')
    await on.start()
    expect(() => on.running!.desk.store.signer.key()).toThrow(/cannot be read/)
  })
})
