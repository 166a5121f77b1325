/*
 * `npm test`: types, lint, import rules, unit tests (the domain's also in two far zones), end-to-end tests. Every part
 * runs whatever became of the others; the last line is the count.
 */
import { spawn } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { buildStale } from '../main/hosts/build.ts'

const root = fileURLToPath(new URL('..', import.meta.url))

interface Count {
  passed: number
  failed: number
  skipped: number
}

interface Part {
  name: string
  /** A script of node_modules, or of ours, and its arguments. */
  run: string[]
  env?: Record<string, string>
  /** Where the part writes its count, and how to read it; without one the part is one check. */
  report?: { file: string; read(json: never): Count }
}

const vitest = (name: string, file: string, filter: string[], env?: Record<string, string>): Part => ({
  name,
  run: ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...filter].concat([
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ]),
  ...(env ? { env } : {}),
  report: {
    file,
    read: (json: { numPassedTests: number; numFailedTests: number; numPendingTests: number }) => ({
      passed: json.numPassedTests,
      failed: json.numFailedTests,
      skipped: json.numPendingTests,
    }),
  },
})

const quick: Part[] = [
  { name: 'types', run: ['node_modules/typescript/bin/tsc', '--noEmit'] },
  { name: 'lint', run: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'] },
  {
    name: 'rules',
    run: [
      'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs',
      '--config',
      '.dependency-cruiser.mjs',
      '--output-type',
      'err-long',
    ].concat(['main', 'app', 'tests', 'prisma']),
  },
]

const long: Part[] = [
  vitest('unit', '.build/unit.json', []),
  vitest('unit, domain in New York', '.build/unit-west.json', ['tests/domain/'], { TZ: 'America/New_York' }),
  vitest('unit, domain in Auckland', '.build/unit-east.json', ['tests/domain/'], { TZ: 'Pacific/Auckland' }),
  {
    name: 'end-to-end',
    run: ['tests/e2e/run.ts'],
    report: {
      file: '.build/e2e.json',
      read: ({ stats }: { stats: Record<'expected' | 'unexpected' | 'flaky' | 'skipped', number> }) => ({
        passed: stats.expected,
        failed: stats.unexpected + stats.flaky,
        skipped: stats.skipped,
      }),
    },
  },
]

/** Runs a command to its end; its output is kept, and shown only where it failed. */
function execute(part: Part): Promise<{ status: number; output: string }> {
  return new Promise(resolve => {
    const child = spawn(process.execPath, part.run, {
      cwd: root,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', ...part.env },
    })
    let output = ''
    const keep = (chunk: Buffer) => {
      output += chunk
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

async function check(part: Part): Promise<Count> {
  if (part.report) rmSync(`${root}${part.report.file}`, { force: true })
  const began = performance.now()
  const { status, output } = await execute(part)
  const count = readCount(part) ?? { passed: status === 0 && !part.report ? 1 : 0, failed: 0, skipped: 0 }
  // A runner that failed without a failed test (a file that does not load), or ran none, has failed all the same.
  if (count.failed === 0 && (status !== 0 || count.passed === 0)) count.failed = 1
  const seconds = ((performance.now() - began) / 1_000).toFixed(0)
  if (count.failed > 0) console.log(`\n${output.trimEnd()}\n`)
  const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : ''
  const outcome = count.failed > 0 ? 'FAILED' : 'ok'
  console.log(
    `${part.name}: ${outcome} (${count.passed} of ${count.passed + count.failed}${skipped}; ${seconds} s)`,
  )
  for (const [line] of output.matchAll(/^Skipped: .*$/gm)) console.log(`  ${line}`)
  return count
}

await buildStale()
const counts = await Promise.all(quick.map(check))
for (const part of long) counts.push(await check(part))
const total = (key: keyof Count) => counts.reduce((sum, count) => sum + count[key], 0)
const skipped = total('skipped') > 0 ? `, ${total('skipped')} skipped` : ''
console.log(`${total('passed')} passed, ${total('failed')} failed${skipped}`)
process.exitCode = total('failed') > 0 ? 1 : 0
