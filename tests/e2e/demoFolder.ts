import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'

/** Where the run keeps its filled folders; build.ts makes it before the first test and takes it away after the last. */
export const demoFoldersEnv = 'LUSTRUM_E2E_DEMO_FOLDERS'

/**
 * A data folder with the demo shop of an instant, closed in good order, to be copied: filling one in takes longer than
 * many tests. The first worker that asks has it made, by `fill`, which gives a folder away; another waits for it.
 */
export async function demoFolder(now: string, fill: () => Promise<string>): Promise<string> {
  const all = process.env[demoFoldersEnv]
  // Outside a browser run there is nobody to share one with.
  if (!all) return fill()
  const made = join(all, now.replace(/\W/g, '-'))
  while (!existsSync(made)) {
    if (begin(`${made}.making`))
      try {
        if (existsSync(made)) break
        const filled = await fill()
        // The keys are each server's own.
        rmSync(join(filled, 'door.json'))
        renameSync(filled, made)
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
