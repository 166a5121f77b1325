import { copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder, databaseFile } from '../../main/hosts/dataFolder.ts'
import { openShop } from '../../main/hosts/openShop.ts'
import { copyAtOnce, ownCopies } from '../../main/services/backup/copying.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { saveCustomer } from '../../main/services/records/customers.ts'
import { readingOverEnds } from '../../main/store/backup/readOver.ts'
import { testShop } from '../services/testShop.ts'

export const add = (desk: Desk, name: string) =>
  saveCustomer(desk, { name, phone: null, email: null, note: '' })
export const names = (desk: Desk) =>
  desk.store.read.customer.findMany({ orderBy: { name: 'asc' } }).then(rows => rows.map(({ name }) => name))

interface Running {
  desk: Desk
  close(): Promise<void>
  kill(): Promise<void>
}

/** A data folder in a temporary one, started and ended as a host does it. */
export interface ShopFolder {
  dir: string
  /** Another may be named between two starts. */
  dataDir: string
  /** What the starts have said. */
  said: string[]
  running: Running | null
  start(restore?: string | null): Promise<Desk>
  /** A start that is refused: its words. */
  refusal(): Promise<string>
  /** A shop with one customer and one copy; closed. */
  usedFolder(): Promise<{ copy: string; shop: string[] }>
  remove(): Promise<void>
}

export function makeShopFolder(): ShopFolder {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-disaster-'))
  const on: ShopFolder = {
    dir,
    dataDir: join(dir, 'data'),
    said: [],
    running: null,
    start: (restore = null) => start(on, restore),
    async refusal() {
      const error = await on.start().catch((error: unknown) => error)
      expect(error).toMatchObject({ name: 'Refusal' })
      return (error as Error).message
    },
    async usedFolder() {
      const desk = await on.start()
      await testShop(desk)
      await add(desk, 'Aalto')
      await copyAtOnce(desk)
      const [copy] = await ownCopies(desk)
      const shop = await names(desk)
      await on.running!.close()
      return { copy: copy!.path, shop }
    },
    async remove() {
      await on.running?.close().catch(() => {})
      rmSync(dir, { recursive: true, force: true })
    },
  }
  return on
}

async function start(on: ShopFolder, restore: string | null): Promise<Desk> {
  const { dir, dataDir } = on
  const claim = claimDataFolder(dataDir, 'web')!
  const desk = await openShop(claim, {
    dataDir,
    demo: false,
    restore,
    migrations: { dir: migrationsDir },
    say: words => on.said.push(words),
  })
  on.running = {
    desk,
    async close() {
      on.running = null
      await readingOverEnds(databaseFile(dataDir))
      await desk.store.close()
      claim.release()
    },
    // The log and the mark stay where they lie, as after a kill; this process lets go of both for the next start. A
    // kill would end the reading over too, which otherwise makes a log of its own where a test has taken it away.
    async kill() {
      on.running = null
      await readingOverEnds(databaseFile(dataDir))
      const kept = mkdtempSync(join(dir, 'kept-'))
      const left = readdirSync(dataDir).filter(name => /^(lustrum\.db|running\.json)/.test(name))
      for (const name of left) copyFileSync(join(dataDir, name), join(kept, name))
      await desk.store.close()
      claim.release()
      for (const name of left) copyFileSync(join(kept, name), join(dataDir, name))
    },
  }
  return desk
}
