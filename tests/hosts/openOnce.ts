/* A start in a process of its own, run by disasters.test.ts as another user: opens the shop of a folder and says what came of it. */
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder } from '../../main/hosts/dataFolder.ts'
import { openShop } from '../../main/hosts/openShop.ts'

const [dataDir] = process.argv.slice(2) as [string]
try {
  const claim = claimDataFolder(dataDir, 'web')
  if (!claim) throw new Error('The folder is taken.')
  const migrations = { dir: migrationsDir }
  const desk = await openShop(claim, { dataDir, demo: false, restore: null, migrations, say: () => {} })
  await desk.store.close()
  claim.release()
  console.log('opened')
} catch (error) {
  const { name, message } = error as Error
  console.log(`${name}: ${message}`)
}
