import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { hashOf, pendingSql } from '../../prisma/newMigration.ts'
import sealed from '../../prisma/sealedMigrations.json' with { type: 'json' }

describe('the migrations', () => {
  it('lead exactly to the schema that the client is generated from', async () => {
    expect(await pendingSql()).toBe('')
  })

  it('are never edited once made: add another instead', () => {
    const hashes = readdirSync(migrationsDir)
      .sort()
      .map(name => [name, hashOf(readFileSync(join(migrationsDir, name, 'migration.sql'), 'utf8'))])
    expect(Object.fromEntries(hashes), 'npm run db:migration seals a new one').toEqual(sealed)
  })
})
