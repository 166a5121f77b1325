import type { Desk } from '../services/desk/desk.ts'
import { checkIntegrity } from '../store/integrity.ts'
import type { MigrationFiles } from '../store/migrate.ts'
import { openStore } from '../store/store.ts'
import { startClock } from './clock.ts'
import { type Claim, databaseFile } from './dataFolder.ts'

export interface ShopOptions {
  dataDir: string
  /** Fill an empty database with the demo shop. */
  demo: boolean
  migrations: MigrationFiles
  /** Told in words what is being done. */
  say: (words: string) => void
}

/** Opens the shop of a claimed data folder: looks it over after a crash, brings it up to date, fills the demo in. */
export async function openShop(claim: Claim, options: ShopOptions): Promise<Desk> {
  const { dataDir, demo, migrations, say } = options
  const file = databaseFile(dataDir)
  if (claim.unclean) {
    say('Lustrum was not closed properly last time: looking the database over.')
    checkIntegrity(file)
    say('The database is sound.')
  }
  const store = await openStore(file, migrations)
  const desk: Desk = { store, now: startClock(process.env), who: 'front desk' }
  if (demo) {
    if ((await store.read.shop.count()) === 0) {
      // Not loaded unless asked for: an invented shop is no part of a real one.
      const { fillDemo } = await import('../services/demo/index.ts')
      await fillDemo(desk)
    } else say('The database already holds a shop: --demo changed nothing.')
  }
  return desk
}
