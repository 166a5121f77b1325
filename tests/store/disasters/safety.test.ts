import { copyFileSync, existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, inject, it } from 'vitest'
import { seeded } from '../../bench/bookedShop.ts'
import { makeFolder } from '../openDatabase.ts'
import { canBeCramped, runCramped } from './crampedRun.ts'
import { noLosses, tally } from './killed.ts'
import { cutPower, cutPowerInCheckpoint, recordActs } from './powerCut.ts'

function emptyDatabase(): string {
  const file = join(makeFolder(), 'lustrum.db')
  copyFileSync(inject('emptyDatabase'), file)
  return file
}

describe('a power cut', () => {
  it('loses no act that was answered and leaves none half there, whatever of the next one was on the disk', async () => {
    const answered = await recordActs(emptyDatabase(), 8)
    const random = seeded(20_260_415)
    for (const [i, before] of answered.slice(0, -1).entries())
      for (let round = 0; round < 4; round++) {
        const file = join(makeFolder(), 'lustrum.db')
        cutPower(file, before, answered[i + 1]!, random)
        expect(tally(file, before.act)).toEqual(noLosses)
        cutPowerInCheckpoint(file, before, random)
        expect(tally(file, before.act)).toEqual(noLosses)
      }
  })

  it('would be noticed here: a log cut before an act was answered loses it', async () => {
    const answered = await recordActs(emptyDatabase(), 3)
    const [first, , third] = answered
    const file = join(makeFolder(), 'lustrum.db')
    cutPower(file, { ...first!, act: 3 }, { ...first!, act: 3 }, () => 0)
    expect(tally(file, third!.act)).toMatchObject({ lost: 2, half: 0 })
  })
})

describe.runIf(canBeCramped)('a full disk', () => {
  it('refuses the act in words and keeps every one before it', () => {
    const file = emptyDatabase()
    const { answered, words } = runCramped('write', file, Math.ceil(statSync(file).size / 1024) + 400)
    expect(answered).toBeGreaterThan(5)
    expect(words).toMatch(
      /^Refusal: (There is no room left for|The disk failed at) .* Nothing of this was saved\.$/,
    )
    expect(tally(file, answered)).toEqual(noLosses)
  })

  it('refuses in words a data sheet or a photo that finds no room, and keeps those before it whole', () => {
    const file = emptyDatabase()
    const { answered, words } = runCramped('fileAway', file, Math.ceil(statSync(file).size / 1024) + 7_000)
    expect(answered).toBeGreaterThan(1)
    expect(words).toMatch(
      /^Refusal: (There is no room left for|The disk failed at) .* Nothing of this was saved\.$/,
    )
    const database = new Database(file, { readonly: true })
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
    expect(
      database.prepare('select sha256, length(bytes) as length from StoredFile order by at').all(),
    ).toEqual(Array.from({ length: answered }, (_, i) => ({ sha256: `${i + 1}`, length: 1_500_000 })))
    expect(database.prepare('select count(*) from AuditLine').pluck().get()).toBe(answered)
    database.close()
  })

  it('makes no copy, says why, and leaves no half of one', () => {
    const file = emptyDatabase()
    const before = readFileSync(file)
    const { words } = runCramped('copy', file, 100)
    expect(words).toMatch(/^Refusal: (There is no room left for|The disk failed at) .*backups/)
    expect(readdirSync(join(dirname(file), 'backups'))).toEqual([])
    expect(readFileSync(file).equals(before)).toBe(true)
  })

  it('in the middle of a migration leaves the database as it was', () => {
    const file = emptyDatabase()
    const database = new Database(file)
    // As the version before wrote it, but for what its last migration added, which the next try runs into.
    database.exec(
      'delete from _prisma_migrations where migration_name = (select max(migration_name) from _prisma_migrations)',
    )
    const rows = () => {
      const opened = new Database(file, { readonly: true })
      try {
        return opened.prepare('select migration_name from _prisma_migrations order by 1').pluck().all()
      } finally {
        opened.close()
      }
    }
    database.close()
    const before = rows()
    const { words } = runCramped('migrate', file, 100)
    expect(words).toMatch(
      /^Refusal: The database .* (cannot be opened for writing|could not be brought up to this version) .*/,
    )
    expect(rows()).toEqual(before)
    expect(existsSync(`${file}.updating`)).toBe(false)
  })
})
