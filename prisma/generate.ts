import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

/**
 * Writes the typed client. Prisma's command line would first download a schema engine it does not need for this, so
 * it is pointed at an executable that is surely there.
 */
export function generateClient(): void {
  const prisma = fileURLToPath(new URL('../node_modules/prisma/build/index.js', import.meta.url))
  const config = fileURLToPath(new URL('prisma.config.ts', import.meta.url))
  const run = spawnSync(process.execPath, [prisma, 'generate', '--config', config, '--no-hints'], {
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
    encoding: 'utf8',
  })
  if (run.status !== 0) throw new Error(`prisma generate failed:\n${run.stdout}\n${run.stderr}`)
}

if (import.meta.main) generateClient()
