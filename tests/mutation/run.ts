/*
 * `npm run mutate -- PATH`: changes the code under PATH one place at a time and runs the tests of its area against each
 * change. A change that no test notices has survived. Prints the score of each folder and every survivor with its place.
 *   --survivors N   how many survivors to print (40)
 *   --sample N      only N changes of all those under PATH, drawn by lot: an estimate of the score of a large folder
 *   --seed WORD     draws others
 */
import { spawnSync } from 'node:child_process'
import { globSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { excludedMutations, keyOf, sample } from './sample.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    survivors: { type: 'string', default: '40' },
    sample: { type: 'string' },
    seed: { type: 'string', default: '' },
  },
})
const path = positionals[0]?.replace(/\/$/, '')
if (!path?.startsWith('main/')) {
  console.error('Name a file or folder under main, such as: npm run mutate -- main/domain/money')
  process.exit(2)
}

/** The tests of an area: its twins; for services also what reaches them through the api. */
function testsOf(area: string): string[] {
  const [, floor, room] = area.split('/')
  if (floor === 'services') return [`tests/services/${room ?? '**'}/**/*.test.ts`, 'tests/api/**/*.test.ts']
  return [`tests/${area.split('/').slice(1, 3).join('/')}/**/*.test.ts`]
}

const files = globSync(statSync(`${root}${path}`).isDirectory() ? `${path}/**/*.ts` : path, {
  cwd: root,
  exclude: file => file.includes('generated') || file.endsWith('/index.ts'),
}).sort()
const drawn = values.sample ? await sample(root, files, Number(values.sample), values.seed) : null

const config = '.build/stryker.config.json'
const report = '.build/mutation.json'
mkdirSync(`${root}.build`, { recursive: true })
rmSync(`${root}${report}`, { force: true })
writeFileSync(
  `${root}${config}`,
  JSON.stringify({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutation/vitest.config.ts' },
    mutate: drawn?.ranges ?? files,
    mutator: { excludedMutations },
    coverageAnalysis: 'perTest',
    ignoreStatic: true,
    concurrency: 2,
    reporters: ['json'],
    jsonReporter: { fileName: report },
    tempDirName: '.build/stryker',
    // TypeScript 7 has no programming interface to rewrite a tsconfig with; the sandbox needs none.
    tsconfigFile: 'none',
    ignorePatterns: ['.data', 'test-results', 'playwright-report'],
    timeoutMS: 15_000,
  }),
)
const run = spawnSync(
  process.execPath,
  ['node_modules/@stryker-mutator/core/bin/stryker.js', 'run', config],
  {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, MUTATION_TESTS: testsOf(path).join(',') },
  },
)
if (run.status !== 0) process.exit(run.status ?? 1)

interface Mutant {
  status: 'Killed' | 'Timeout' | 'Survived' | 'NoCoverage' | 'Ignored' | 'CompileError' | 'RuntimeError'
  mutatorName: string
  replacement?: string
  location: { start: { line: number; column: number }; end: { line: number; column: number } }
}
const { files: reports } = JSON.parse(readFileSync(`${root}${report}`, 'utf8')) as {
  files: Record<string, { source: string; mutants: Mutant[] }>
}
const folders = new Map<string, { caught: number; tried: number }>()
const survivors: string[] = []
for (const [file, { source, mutants }] of Object.entries(reports)) {
  const folder = file.slice(0, file.lastIndexOf('/'))
  const count = folders.get(folder) ?? { caught: 0, tried: 0 }
  folders.set(folder, count)
  for (const { status, location, replacement, mutatorName } of mutants) {
    if (drawn && !drawn.keys.has(keyOf(file, location.start, mutatorName, replacement))) continue
    if (status === 'Ignored' || status === 'CompileError' || status === 'RuntimeError') continue
    count.tried += 1
    if (status === 'Killed' || status === 'Timeout') count.caught += 1
    else {
      const { line } = location.start
      const text = source.split('\n')[line - 1]?.trim() ?? ''
      const seen = status === 'NoCoverage' ? ' (no test runs it)' : ''
      survivors.push(
        `${file}:${line} ${mutatorName}${seen}: ${text}  ->  ${(replacement ?? '').replaceAll(/\s+/g, ' ')}`,
      )
    }
  }
}
for (const line of survivors.slice(0, Number(values.survivors))) console.log(line)
const share = ({ caught, tried }: { caught: number; tried: number }) =>
  `${caught} of ${tried} caught, ${tried === 0 ? 100 : ((100 * caught) / tried).toFixed(1)} %`
for (const [folder, count] of [...folders].sort(([a], [b]) => a.localeCompare(b)))
  console.log(`${folder}: ${share(count)}`)
const total = [...folders.values()].reduce(
  (a, b) => ({ caught: a.caught + b.caught, tried: a.tried + b.tried }),
  { caught: 0, tried: 0 },
)
const margin = drawn
  ? `, drawn from ${drawn.of}: give or take ${(98 / Math.sqrt(total.tried)).toFixed(0)} points at most`
  : ''
console.log(`${path}: ${share(total)}${margin}`)
