import { spawn } from 'node:child_process'
import { readFileSync, rmSync, statfsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))

export interface Count {
  passed: number
  failed: number
  skipped: number
  /** How many of those that passed failed at first. */
  secondTry?: number
}

/** One run of one tool over the project. */
export interface Part {
  name: string
  /** A script of node_modules, or of ours, and its arguments. */
  run: string[]
  env?: Record<string, string>
  /** Where the part writes its count, and how to read it; without one the part is one check. */
  report?: { file: string; read(json: never): Count }
}

/** The unit tests whose path holds one of the words; all of them without any. */
export function unit(name: string, words: string[] = [], env: Record<string, string> = {}): Part {
  const file = `.build/${name.replace(/\W+/g, '-')}.json`
  return {
    name,
    run: ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...words].concat([
      '--reporter=tests/setup/failures.ts',
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ]),
    env,
    report: {
      file,
      read: (json: { numPassedTests: number; numFailedTests: number; numPendingTests: number }) => ({
        passed: json.numPassedTests,
        failed: json.numFailedTests,
        skipped: json.numPendingTests,
      }),
    },
  }
}

/** The end-to-end tests whose path holds one of the words; all of them without any. */
export function endToEnd(name: string, words: string[] = [], env: Record<string, string> = {}): Part {
  return {
    name,
    run: ['tests/e2e/run.ts', ...words],
    env,
    report: {
      file: '.build/e2e.json',
      read: ({ stats }: { stats: Record<'expected' | 'unexpected' | 'flaky' | 'skipped', number> }) => ({
        passed: stats.expected + stats.flaky,
        failed: stats.unexpected,
        skipped: stats.skipped,
        secondTry: stats.flaky,
      }),
    },
  }
}

/**
 * Every act of a test's shop is flushed to the disk, which a slow one makes the longest part of a run: temporary folders
 * lie in memory where there is room (what a power cut leaves is tried on a recorded log, not on the disk). And a process
 * that a test starts reads its code compiled.
 */
function shortWays(): Record<string, string> {
  const compiled = { NODE_COMPILE_CACHE: `${root}.build/compiled` }
  try {
    const { bavail, bsize } = statfsSync('/dev/shm')
    return bavail * bsize > 4e9 ? { ...compiled, TMPDIR: '/dev/shm' } : compiled
  } catch {
    return compiled
  }
}

/** Runs a command to its end. Its output is kept, but a test that fails is named at once. */
function execute(part: Part): Promise<{ status: number; output: string }> {
  return new Promise(resolve => {
    const child = spawn(process.execPath, part.run, {
      cwd: root,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', ...shortWays(), ...part.env },
    })
    let output = ''
    let told = 0
    const keep = (chunk: Buffer) => {
      output += chunk
      const end = output.lastIndexOf('\n') + 1
      for (const [line] of output.slice(told, end).matchAll(/^\s*✘ .*$/gm))
        console.log(`${part.name}: ${line.trim()}`)
      told = Math.max(told, end)
    }
    child.stdout.on('data', keep)
    child.stderr.on('data', keep)
    child.once('close', code => resolve({ status: code ?? 1, output }))
  })
}

function readCount({ report }: Part): Count | null {
  if (!report) return null
  try {
    return report.read(JSON.parse(readFileSync(`${root}${report.file}`, 'utf8')) as never)
  } catch {
    return null
  }
}

/** Runs a part and prints a line on what became of it; all it said only where it failed. */
export async function check(part: Part): Promise<Count> {
  if (part.report) rmSync(`${root}${part.report.file}`, { force: true })
  const began = performance.now()
  const { status, output } = await execute(part)
  const count = readCount(part) ?? { passed: status === 0 && !part.report ? 1 : 0, failed: 0, skipped: 0 }
  // A runner that failed without a failed test (a file that does not load), or ran none, has failed all the same.
  if (count.failed === 0 && (status !== 0 || count.passed === 0)) count.failed = 1
  const seconds = ((performance.now() - began) / 1_000).toFixed(0)
  if (count.failed > 0) console.log(`\n${output.trimEnd()}\n`)
  const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : ''
  const again = count.secondTry
    ? `, ${count.secondTry} of them at a second try: mend what is named above`
    : ''
  const outcome = count.failed > 0 ? 'FAILED' : 'ok'
  console.log(
    `${part.name}: ${outcome} (${count.passed} of ${count.passed + count.failed}${skipped}${again}; ${seconds} s)`,
  )
  for (const [line] of output.matchAll(/^Skipped: .*$/gm)) console.log(`  ${line}`)
  return count
}

/** Prints the count over all parts as the last line, and fails the process where anything failed. */
export function tally(counts: Count[]): void {
  const total = (key: 'passed' | 'failed' | 'skipped') => counts.reduce((sum, count) => sum + count[key], 0)
  const skipped = total('skipped') > 0 ? `, ${total('skipped')} skipped` : ''
  console.log(`${total('passed')} passed, ${total('failed')} failed${skipped}`)
  process.exitCode = total('failed') > 0 ? 1 : 0
}
