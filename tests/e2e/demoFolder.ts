import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { ShopServer } from './server.ts'

/** Where the run keeps its filled folders; build.ts makes it before the first test and takes it away after the last. */
export const demoFoldersEnv = 'LUSTRUM_E2E_DEMO_FOLDERS'

/**
 * A data folder with the demo shop of an instant, closed in good order, to be copied: filling one in takes longer than
 * many tests. The first worker that asks has it made by the real command; another waits for it.
 */
export async function demoFolder(now: string): Promise<string> {
  const all = process.env[demoFoldersEnv]
  if (!all) throw new Error(`${demoFoldersEnv} names no folder: global set-up did not run.`)
  const made = join(all, now.replace(/\W/g, '-'))
  while (!existsSync(made)) {
    if (begin(`${made}.making`))
      try {
        await make(now, made)
      } finally {
        rmSync(`${made}.making`, { recursive: true, force: true })
      }
    else await wait(50)
  }
  return made
}

/** Whether nobody else has begun. */
function begin(sign: string): boolean {
  try {
    mkdirSync(sign)
    return true
  } catch {
    return false
  }
}

async function make(now: string, made: string): Promise<void> {
  const shop = new ShopServer({ now })
  try {
    await shop.fillDemo()
    // The keys are each server's own.
    rmSync(join(shop.dataDir, 'door.json'))
    renameSync(shop.dataDir, made)
  } finally {
    await shop.remove()
  }
}
