import { mkdtempSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { copyAtOnce } from '../../../main/services/backup/copying.ts'
import { saveCopiesSettings } from '../../../main/services/backup/settings.ts'
import { copiesStanding } from '../../../main/services/backup/standing.ts'
import { readComputer, writeComputer } from '../../../main/store/backup/computer.ts'
import { noteAtStart } from '../../../main/store/backup/readOver.ts'
import { makeFolder } from '../../store/openDatabase.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

const at = '2026-04-15T14:00:00Z'
const nothing = { line: '', drill: null, warnings: [] }

it('says nothing before there is a shop', async () => {
  expect(await copiesStanding(await makeDesk(at))).toEqual(nothing)
})

it('says nothing else where the database is gone', async () => {
  const desk = await makeDesk(at)
  await testShop(desk)
  await copyAtOnce(desk)
  renameSync(desk.store.source.file, join(makeFolder(), 'away.db'))
  expect(await copiesStanding(desk)).toEqual({
    ...nothing,
    warnings: [{ about: 'data', words: expect.stringMatching(/is not there any more/) }],
  })
})

it('does not hide what is wrong with the program', async () => {
  const desk = await makeDesk(at)
  const assertThere = () => {
    throw new TypeError('a fault')
  }
  await expect(copiesStanding({ ...desk, store: { ...desk.store, assertThere } })).rejects.toThrow('a fault')
})

it('takes a second place for being in order until it was looked into, and says where copies lie', async () => {
  const desk = await makeDesk(at)
  await testShop(desk)
  const place = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
  onTestFinished(() => rmSync(place, { recursive: true }))
  await copyAtOnce(desk)
  expect(await copiesStanding(desk)).toEqual({
    ...nothing,
    line: 'Last good copy: today at 10:00, on this computer only.',
  })
  await saveCopiesSettings(desk, { place, version: 0 })
  // Nobody has looked there yet.
  expect((await copiesStanding(desk)).line).toBe(
    `Last good copy: today at 10:00, on this computer and in ${place}.`,
  )
  desk.setNow('2026-04-15T15:00:00Z')
  await copyAtOnce(desk)
  const other = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
  onTestFinished(() => rmSync(other, { recursive: true }))
  await saveCopiesSettings(desk, { place: other, version: 1 })
  // What was seen of the place before says nothing about this one.
  expect((await copiesStanding(desk)).line).toContain(`today at 11:00, on this computer and in ${other}.`)
})

it('says what was found of the data before anything of the copies, and a drill only where it failed', async () => {
  const desk = await makeDesk(at)
  await testShop(desk)
  await copyAtOnce(desk)
  const dataDir = join(desk.store.source.file, '..')
  const tried = (opened: boolean, words: string) =>
    writeComputer(dataDir, { ...readComputer(dataDir), drill: { at: desk.now(), opened, words } })
  tried(true, 'It opens.')
  expect(await copiesStanding(desk)).toMatchObject({ drill: 'It opens.', warnings: [] })
  tried(false, 'It does not open.')
  noteAtStart(desk.store.source.file, 'A log is missing.')
  desk.setNow('2026-04-17T14:00:00Z')
  expect(await copiesStanding(desk)).toMatchObject({
    drill: 'It does not open.',
    warnings: [
      { about: 'data', words: 'A log is missing.' },
      { about: 'copies', words: 'The last good copy is more than a day old: Wed 15 April at 10:00.' },
      { about: 'copies', words: 'It does not open.' },
    ],
  })
})
