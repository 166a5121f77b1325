import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Started {
  process: ChildProcess
  /** All it has said so far, on both streams. */
  output(): string
  /** Waits until it has said so; rejects where it ends without. */
  says(words: RegExp): Promise<RegExpExecArray>
  /** Waits for its end; its exit status, or null where a signal ended it. */
  ends(): Promise<number | null>
  kill(signal?: NodeJS.Signals): Promise<number | null>
}

/** Runs `npm start` with these flags, without npm between. */
export function runStart(args: string[], env: Record<string, string> = {}): Started {
  return run('main/hosts/start.mjs', args, env)
}

/** Runs a script of the project's, or of a copy of it. */
export function run(script: string, args: string[], env: Record<string, string> = {}, cwd = root): Started {
  const child = spawn(process.execPath, [script, ...args], {
    cwd,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let output = ''
  let ended = false
  let wake = () => {}
  const hear = (chunk: Buffer) => {
    output += chunk
    wake()
  }
  child.stdout.on('data', hear)
  child.stderr.on('data', hear)
  const end = once(child, 'close').then(() => {
    ended = true
    wake()
    return child.exitCode
  })
  return {
    process: child,
    output: () => output,
    async says(words) {
      for (;;) {
        const found = words.exec(output)
        if (found) return found
        if (ended) throw new Error(`It ended without saying ${words}:\n${output}`)
        await new Promise<void>(resolve => {
          wake = resolve
        })
      }
    },
    ends: () => end,
    kill(signal = 'SIGTERM') {
      child.kill(signal)
      return end
    },
  }
}
