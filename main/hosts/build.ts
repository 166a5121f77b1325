import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { generateClient } from '../../prisma/generate.ts'
import { takeLock } from '../store/fileLock.ts'
import { bundleDesktop } from './buildDesktop.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const built = join(root, '.build')

export const rendererDir = join(built, 'renderer')
export const migrationsDir = join(root, 'prisma', 'migrations')
export const desktopBundle = join(built, 'main', 'desktop.mjs')

/** One hash over what a product is built from. */
function fingerprint(paths: string[]): string {
  const hash = createHash('sha256')
  const add = (path: string) => {
    const file = join(root, path)
    if (statSync(file).isDirectory()) {
      for (const name of readdirSync(file).sort()) if (name !== 'generated') add(join(path, name))
    } else hash.update(`${path}\0`).update(readFileSync(file)).update('\0')
  }
  for (const path of paths) add(path)
  return hash.digest('hex')
}

/** Runs `make` unless what it is made from is as it was when it last ran. */
async function unlessFresh(
  name: string,
  product: string,
  sources: string[],
  make: () => unknown,
): Promise<void> {
  const stamp = join(built, `${name}.stamp`)
  const print = fingerprint(sources)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === print && existsSync(product)) return
  await make()
  writeFileSync(stamp, print)
}

/**
 * A build leaves NODE_ENV at production, and with it all that this process starts later: the server of `npm run dev`
 * then loads the page anew at every edit.
 */
async function keepingMode(build: () => Promise<void>): Promise<void> {
  const mode = process.env.NODE_ENV
  await build()
  if (mode === undefined) delete process.env.NODE_ENV
}

/** Does `work` while no other process builds: two would write the same files. */
async function alone(work: () => Promise<void>): Promise<void> {
  mkdirSync(built, { recursive: true })
  let unlock = takeLock(join(built, 'lock.db'))
  while (!unlock) {
    await wait(100)
    unlock = takeLock(join(built, 'lock.db'))
  }
  try {
    await work()
  } finally {
    unlock()
  }
}

/** The typed database client. */
function client(): Promise<void> {
  return unlessFresh(
    'client',
    join(root, 'main', 'store', 'generated', 'client.ts'),
    ['prisma/schema', 'prisma/generate.ts', 'package-lock.json'],
    generateClient,
  )
}

/** Lays beside each text of a folder the same compressed, so that no answer has to be. */
function compress(dir: string): void {
  for (const name of readdirSync(dir))
    if (/\.(js|css|svg)$/.test(name))
      writeFileSync(join(dir, `${name}.gz`), gzipSync(readFileSync(join(dir, name)), { level: 9 }))
}

/** The screens. */
function renderer(): Promise<void> {
  return unlessFresh(
    'renderer',
    join(rendererDir, 'index.html'),
    ['app', 'main/domain', 'main/api', 'main/hosts/build.ts', 'assets', 'package-lock.json'],
    () => apart(screensFlag),
  )
}

const screensFlag = '--screens'

async function bundleScreens(): Promise<void> {
  const { build } = await import('vite')
  await build({ configFile: join(root, 'app', 'vite.config.ts'), logLevel: 'warn' })
  compress(join(rendererDir, 'assets'))
}

/** In a process of its own: what a bundler takes, close to a gigabyte, would stay with the app for as long as it runs. */
async function apart(flag: string): Promise<void> {
  const child = spawn(process.execPath, [fileURLToPath(import.meta.url), flag], { stdio: 'inherit' })
  const [status] = await once(child, 'exit')
  if (status !== 0) throw new Error(`The screens could not be built: exit status ${status}.`)
}

/** The window's process, as one file. */
function desktop(): Promise<void> {
  return unlessFresh(
    'desktop',
    desktopBundle,
    ['main', 'prisma/schema', 'prisma/migrations', 'package-lock.json'],
    () => keepingMode(() => bundleDesktop(root, dirname(desktopBundle))),
  )
}

export const buildClient = () => alone(client)

/** What the web host needs and is stale. */
export const buildStale = () =>
  alone(async () => {
    await client()
    await renderer()
  })

/** What the window needs besides, if it is stale. */
export const buildDesktop = () =>
  alone(async () => {
    await client()
    await desktop()
  })

if (import.meta.main) {
  if (process.argv.includes('--client')) await buildClient()
  else if (process.argv.includes(screensFlag)) await bundleScreens()
  else {
    await buildStale()
    await buildDesktop()
  }
}
