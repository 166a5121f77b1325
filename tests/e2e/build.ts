import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildStale } from '../../main/hosts/build.ts'
import { demoFoldersEnv } from './demoFolder.ts'

/** Before the first test: what the servers would otherwise each build at their start, and a place for demo shops. */
export default async function build(): Promise<() => void> {
  await buildStale()
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-demos-'))
  process.env[demoFoldersEnv] = dir
  return () => rmSync(dir, { recursive: true, force: true })
}
