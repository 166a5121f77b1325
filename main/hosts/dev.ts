/*
 * `npm run dev`: an edited screen shows at once, with what was typed and chosen there kept; Vite's server sees to that.
 * The web host before it starts again on a change of what it runs itself. Takes the flags of `npm start`; the browser
 * stays let in over all starts.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createServer as createVite } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))
/** What the host runs; app/ and assets/ are Vite's. */
const watched = ['main', 'prisma']

/** A port that is free now. */
async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  server.close()
  await once(server, 'close')
  return port
}

const vitePort = await freePort()
const vite = await createVite({
  configFile: join(root, 'app', 'vite.config.ts'),
  cacheDir: join(root, '.build', 'vite'),
  logLevel: 'warn',
  html: { cspNonce: '__NONCE__' },
  // The page comes from the host, so the socket's address has to be told it.
  server: {
    host: '127.0.0.1',
    port: vitePort,
    strictPort: true,
    hmr: { host: '127.0.0.1', clientPort: vitePort },
    fs: { allow: [root] },
    // Screens are fetched when they are gone to; here they are read at the start, with the packages they want.
    warmup: { clientFiles: ['./screens/*/*.tsx'] },
  },
})
await vite.listen()
// Reads every module and bundles the packages they want: found out later, a package would make the page load again.
await vite.warmupRequest('/start.tsx')
await vite.waitForRequestsIdle()

/** Vite's form of the page, in a folder of its own where the host looks for it. */
async function layPage(): Promise<string> {
  mkdirSync(join(root, '.build'), { recursive: true })
  const dir = mkdtempSync(join(root, '.build', 'page-'))
  // What lies beside app/ has an address of Vite's own.
  const page = readFileSync(join(root, 'app', 'index.html'), 'utf8').replaceAll(
    '../assets/',
    `/@fs${root}assets/`,
  )
  writeFileSync(join(dir, 'index.html'), await vite.transformIndexHtml('/index.html', page))
  return dir
}

const pageDir = await layPage()
const args = process.argv.slice(2)
let child: ChildProcess | null = null
let starts = 0

function start(): void {
  const quiet = starts++ > 0 ? ['--no-open'] : []
  child = spawn(process.execPath, ['main/hosts/devHost.ts', '--host', 'web', ...args, ...quiet], {
    cwd: root,
    stdio: 'inherit',
    env: {
      ...process.env,
      LUSTRUM_DEV_PAGE: pageDir,
      LUSTRUM_DEV_VITE: `http://127.0.0.1:${vitePort}`,
    },
  })
}

async function stop(): Promise<void> {
  if (!child || child.exitCode !== null || child.signalCode !== null) return
  child.kill('SIGTERM')
  await once(child, 'exit')
}

let timer: NodeJS.Timeout | undefined
let restarting = Promise.resolve()

/** Waits for the last of a burst of changes: an editor saves several files at once. */
function restartSoon(): void {
  clearTimeout(timer)
  timer = setTimeout(() => {
    restarting = restarting.then(stop).then(start)
  }, 200)
}

async function end(): Promise<void> {
  await stop()
  await vite.close()
  rmSync(pageDir, { recursive: true, force: true })
  process.exit(0)
}

for (const dir of watched)
  watch(new URL(`../../${dir}`, import.meta.url), { recursive: true }, (_event, name) => {
    // The generated client is written by the start itself.
    if (!name?.includes('generated')) restartSoon()
  })
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => void end())
start()
