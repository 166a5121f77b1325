/*
 * `npm run dev`: the web host, started again whenever its sources change; each start builds what is stale. Takes the
 * flags of `npm start`. Reload the browser to see a change; it stays let in.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { watch } from 'node:fs'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const watched = ['app', 'main', 'prisma', 'assets']

const args = process.argv.slice(2)
let child: ChildProcess | null = null
let starts = 0

function start(): void {
  const quiet = starts++ > 0 ? ['--no-open'] : []
  child = spawn(process.execPath, ['main/hosts/start.ts', '--host', 'web', ...args, ...quiet], {
    cwd: root,
    stdio: 'inherit',
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

for (const dir of watched)
  watch(new URL(`../../${dir}`, import.meta.url), { recursive: true }, (_event, name) => {
    // The generated client is written by the start itself.
    if (!name?.includes('generated')) restartSoon()
  })
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.on(signal, () => void stop().then(() => process.exit(0)))
start()
