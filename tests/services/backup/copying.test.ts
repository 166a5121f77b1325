import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { backupTick, copyAtOnce, copyingEnds, ownCopies } from '../../../main/services/backup/copying.ts'
import {
  copiesSettings,
  dataDirOf,
  passphraseOf,
  saveCopiesSettings,
} from '../../../main/services/backup/settings.ts'
import { copiesStanding } from '../../../main/services/backup/standing.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let place: string
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  await testShop(desk)
  place = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
})
afterEach(async () => {
  await desk.close()
  rmSync(place, { recursive: true, force: true })
})

const warnings = async () => (await copiesStanding(desk)).warnings.map(warning => warning.words)
const copiesThere = () => readdirSync(place).filter(name => name.endsWith('.lustrum-copy'))

describe('copies that make themselves', () => {
  it('come once an hour, here and in the second place, and are said in one line', async () => {
    await saveCopiesSettings(desk, { place, version: 0 })
    expect((await copiesStanding(desk)).line).toBe('No copy has been made yet.')
    await backupTick(desk)
    await backupTick(desk)
    expect(copiesThere()).toHaveLength(1)
    expect((await copiesStanding(desk)).line).toBe(
      `Last good copy: today at 10:00, on this computer and in ${place}.`,
    )
    desk.setNow('2026-04-15T14:59:00Z')
    await backupTick(desk)
    expect(copiesThere()).toHaveLength(1)
    desk.setNow('2026-04-15T15:00:00Z')
    await backupTick(desk)
    expect(copiesThere()).toHaveLength(2)
    expect(await ownCopies(desk)).toHaveLength(2)
    expect(await warnings()).toEqual([])
  })

  it('are carried to the second place too where two are made in one minute', async () => {
    await saveCopiesSettings(desk, { place, version: 0 })
    for (let nth = 1; nth <= 2; nth++) {
      await copyAtOnce(desk)
      expect(copiesThere()).toEqual((await ownCopies(desk)).map(({ name }) => name))
    }
    expect(copiesThere()).toEqual([expect.stringMatching(/-2\.lustrum-copy$/)])
  })

  it('are only this shop’s, whatever else lies in the folder', async () => {
    await copyAtOnce(desk)
    expect(await ownCopies(desk)).toHaveLength(1)
    const source = { ...desk.store.source, shopId: 'another' }
    expect(await ownCopies({ store: { ...desk.store, source } })).toEqual([])
  })

  it('are waited for at the end, which comes at once where none is under way', async () => {
    await expect(copyingEnds(desk.store)).resolves.toBeUndefined()
    const copying = copyAtOnce(desk)
    await copyingEnds(desk.store)
    expect(await ownCopies(desk)).toHaveLength(1)
    await copying
  })

  it('are not made before there is a shop', async () => {
    const empty = await makeDesk()
    await backupTick(empty)
    expect(existsSync(join(dataDirOf(empty), 'backups'))).toBe(false)
    await empty.close()
  })

  it('go on here while the second place is away, which is said, and are carried there once it is back', async () => {
    await saveCopiesSettings(desk, { place, version: 0 })
    await backupTick(desk)
    renameSync(place, `${place}-away`)
    // What an unplugged disk leaves behind.
    mkdirSync(place)
    desk.setNow('2026-04-15T15:00:00Z')
    await backupTick(desk)
    expect(await ownCopies(desk)).toHaveLength(2)
    expect(await warnings()).toEqual([
      expect.stringMatching(/^The second place .* is not there: plug the disk in/),
    ])
    expect(readdirSync(place)).toEqual([])
    rmSync(place, { recursive: true })
    renameSync(`${place}-away`, place)
    desk.setNow('2026-04-15T15:15:00Z')
    await backupTick(desk)
    expect(copiesThere()).toHaveLength(2)
    expect(await warnings()).toEqual([])
  })

  it('asleep for a week, begin again at once, and until then are said to be old', async () => {
    await backupTick(desk)
    desk.setNow('2026-04-22T14:00:00Z')
    expect(await warnings()).toContain('The last good copy is more than a day old: Wed 15 April at 10:00.')
    await backupTick(desk)
    expect(await warnings()).toEqual([])
    expect(await ownCopies(desk)).toHaveLength(2)
  })

  it('come under a clock set back too, which is said', async () => {
    await backupTick(desk)
    desk.setNow('2026-04-14T14:00:00Z')
    await backupTick(desk)
    expect(await ownCopies(desk)).toHaveLength(2)
    expect(await warnings()).toEqual([
      expect.stringMatching(/^This computer's clock shows today at 10:00, but/),
    ])
  })

  it('refuse in words where the copy cannot be made, say so on the first screen, and come again later', async () => {
    const folder = join(dataDirOf(desk), 'backups')
    // A file where the folder should be stands for a disk that will not have it.
    writeFileSync(folder, '')
    await expect(copyAtOnce(desk)).rejects.toMatchObject({ code: 'copy-failed' })
    expect(await warnings()).toHaveLength(1)
    rmSync(folder)
    await backupTick(desk)
    expect(existsSync(folder)).toBe(false)
    desk.setNow('2026-04-15T14:15:00Z')
    await backupTick(desk)
    expect(await warnings()).toEqual([])
    expect(await ownCopies(desk)).toHaveLength(1)
  })

  it('are not made of another file that lies in the place of the shop, and say so', async () => {
    const other = await makeDesk('2026-04-15T14:00:00Z')
    copyFileSync(other.store.source.file, `${desk.store.source.file}.other`)
    await other.close()
    renameSync(`${desk.store.source.file}.other`, desk.store.source.file)
    await expect(copyAtOnce(desk)).rejects.toThrow(/Close Lustrum/)
    expect(existsSync(join(dataDirOf(desk), 'backups'))).toBe(false)
  })

  it('grow fewer with age, here and in the second place', async () => {
    await saveCopiesSettings(desk, { place, version: 0 })
    for (const at of ['15T14', '15T15', '15T16', '18T14']) {
      desk.setNow(`2026-04-${at}:00:00Z`)
      await backupTick(desk)
    }
    // Of the day three days ago one is kept.
    expect(await ownCopies(desk)).toHaveLength(2)
    expect(copiesThere()).toHaveLength(2)
  })

  it('are tried once a month: one is opened, counted, and what came of it is said', async () => {
    await backupTick(desk)
    expect((await copiesStanding(desk)).drill).toBeNull()
    desk.setNow('2026-04-16T14:00:00Z')
    await backupTick(desk)
    const { drill } = await copiesStanding(desk)
    expect(drill).toMatch(/^The copy of Wed 15 April at 10:00 opens: \d+ jobs?, \d+ cars?, \d+ customers?\.$/)
    expect(readdirSync(join(dataDirOf(desk), 'backups')).every(name => name.endsWith('.lustrum-copy'))).toBe(
      true,
    )
  })
})

describe('the settings of the copies', () => {
  it('keep the place and the passphrase apart from the database, and are saved on the version seen', async () => {
    const saved = await saveCopiesSettings(desk, {
      place,
      passphrase: 'four words of no meaning',
      version: 0,
    })
    expect(saved).toEqual({ place, locked: true, version: 1, sameDisk: true })
    expect(passphraseOf(desk)).toBe('four words of no meaning')
    expect(copiesSettings(desk)).toEqual({ place, locked: true, version: 1 })
    await expect(saveCopiesSettings(desk, { place: null, version: 0 })).rejects.toMatchObject({
      code: 'stale',
    })
    await saveCopiesSettings(desk, { place: ' ', passphrase: null, version: 1 })
    expect(copiesSettings(desk)).toEqual({ place: null, locked: false, version: 2 })
    const lines = await desk.store.read.auditLine.findMany({ where: { entity: 'backups' } })
    expect(JSON.stringify(lines)).not.toContain('four words')
  })

  it('refuse a passphrase that is soon guessed', async () => {
    await expect(
      saveCopiesSettings(desk, { place: null, passphrase: 'elevenchars', version: 0 }),
    ).rejects.toMatchObject({ code: 'passphrase-short', field: 'passphrase' })
  })
})
