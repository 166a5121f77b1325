import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { generateClient } from '../../prisma/generate.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

export const rendererDir = join(root, '.build', 'renderer')
export const migrationsDir = join(root, 'prisma', 'migrations')

/** One hash over what a product is built from. */
function fingerprint(paths: string[]): string {
  const hash = createHash('sha256')
  const add = (path: string) => {
    if (statSync(path).isDirectory()) {
      for (const name of readdirSync(path).sort()) if (name !== 'generated') add(join(path, name))
    } else hash.update(path).update(readFileSync(path))
  }
  for (const path of paths) add(join(root, path))
  return hash.digest('hex')
}

/** Runs `make` unless what it is made from is as it was when it last ran. */
async function unlessFresh(
  name: string,
  product: string,
  sources: string[],
  make: () => unknown,
): Promise<void> {
  const stamp = join(root, '.build', `${name}.stamp`)
  const print = fingerprint(sources)
  const read = (path: string) => {
    try {
      return readFileSync(path, 'utf8')
    } catch {
      return ''
    }
  }
  if (read(stamp) === print && read(join(root, product)) !== '') return
  await make()
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, print)
}

/** The typed database client. */
export function buildClient(): Promise<void> {
  return unlessFresh(
    'client',
    'main/store/generated/client.ts',
    ['prisma/schema', 'prisma/generate.ts', 'package-lock.json'],
    generateClient,
  )
}

/** The screens. */
export function buildRenderer(): Promise<void> {
  return unlessFresh(
    'renderer',
    '.build/renderer/index.html',
    ['app', 'main/domain', 'main/api', 'assets', 'package-lock.json'],
    async () => {
      const { build } = await import('vite')
      await build({ configFile: join(root, 'app', 'vite.config.ts'), logLevel: 'warn' })
    },
  )
}

/** Everything that is stale. */
export async function buildStale(): Promise<void> {
  await buildClient()
  await buildRenderer()
}

if (import.meta.main) await (process.argv.includes('--client') ? buildClient() : buildStale())
