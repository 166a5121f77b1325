import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { holdingsWords, momentWords } from '../domain/backup/index.ts'
import { say } from '../domain/language/index.ts'
import { prepareRestore } from '../services/backup/restore.ts'
import { passphraseOf } from '../services/backup/settings.ts'
import { inspect } from '../store/backup/inspect.ts'
import { readContent } from '../store/backup/readCopy.ts'
import { finishRestore, type Restored } from '../store/backup/restoring.ts'
import { onDisk } from '../store/diskWords.ts'
import type { MigrationFiles } from '../store/migrate.ts'
import { openSecrets } from '../store/secrets.ts'

interface Asked {
  dataDir: string
  /** The copy named on the command line. */
  restore: string | null
  migrations: MigrationFiles
  now: () => number
  say: (words: string) => void
}

/**
 * Before the database is opened: makes the copy named on the command line ready, and puts one that is ready in the
 * place of what is here, which is kept. Null where there is none.
 */
export async function restoreFirst(file: string, asked: Asked): Promise<Restored | null> {
  const { dataDir, restore, migrations, now, say: tell } = asked
  const store = {
    source: { file, shopId: '', migrations },
    secrets: openSecrets(join(dataDir, 'secrets.json')),
  }
  const passphrase = process.env.LUSTRUM_PASSPHRASE ?? null
  if (restore !== null) {
    const { header, content } = await readContent(restore, passphrase ?? passphraseOf({ store }))
    const { shop } = content.holdings
    const when = momentWords(header.madeAt, { nowAt: now(), zone: shop?.zone ?? 'UTC' })
    tell(
      say('The copy of {when} holds {shop}: {holdings}.', {
        when,
        shop: shop?.name ?? say('no shop'),
        holdings: holdingsWords(content.holdings),
      }),
    )
    tell(say('Here now: {what}', { what: presentWords(file) }))
    await prepareRestore({ store, now, who: 'front desk' }, { path: restore, passphrase })
  }
  const restored = await onDisk(dataDir, () =>
    finishRestore(file, dataDir, { at: now(), passphrase: passphraseOf({ store }) }),
  )
  if (restored) {
    tell(
      restored.shopName
        ? say('{shop} is restored.', { shop: restored.shopName })
        : say('The copy is restored.'),
    )
    if (restored.photosMissing)
      tell(
        say('{count} of its photos cannot be found: they are in the folder “photos” beside the copy.', {
          count: restored.photosMissing,
        }),
      )
    if (restored.keptAs) tell(say('What was here before lies in {path}', { path: restored.keptAs }))
  }
  return restored
}

function presentWords(file: string): string {
  if (!existsSync(file)) return say('no database.')
  try {
    const { fault, holdings } = inspect(file)
    return fault === null
      ? `${holdings.shop?.name ?? say('no shop')}: ${holdingsWords(holdings)}.`
      : say('a damaged database.')
  } catch {
    return say('a database that cannot be read.')
  }
}
