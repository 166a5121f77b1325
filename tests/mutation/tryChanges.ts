import { spawnSync } from 'node:child_process'
import { globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { excludedMutations, keyOf } from './sample.ts'

interface Mutant {
  status: 'Killed' | 'Timeout' | 'Survived' | 'NoCoverage' | 'Ignored' | 'CompileError' | 'RuntimeError'
  mutatorName: string
  replacement?: string
  location: { start: { line: number; column: number }; end: { line: number; column: number } }
}

/** A change that was tried, and what is printed of it where nothing noticed it. */
export interface Tried {
  file: string
  key: string
  caught: boolean
  /** Caught only by the tests not ending in time: an endless loop, or a machine too busy to say. */
  timedOut: boolean
  words: string
}

/**
 * The tests of a room: those of its folder; for services also those of the routers over it. The other tests of the api
 * (all queries, all limits, bent inputs) take minutes and ask no more of a room than that it answers.
 */
function testsOf(root: string, area: string): string[] {
  const [, floor, room] = area.split('/')
  if (!room) return [`tests/${floor}/*.test.ts`]
  if (floor !== 'services') return [`tests/${floor}/${room}/**/*.test.ts`]
  const over = globSync('main/api/*.ts', { cwd: root }).filter(file =>
    new RegExp(`services/${room}/(?!.*[iI]nputs)`).test(readFileSync(`${root}${file}`, 'utf8')),
  )
  return [
    `tests/services/${room}/**/*.test.ts`,
    ...over.map(file => file.replace(/^main/, 'tests').replace(/\.ts$/, '*.test.ts')),
  ]
}

/**
 * Tries each change of the ranges (whole files, or files with places) against the tests of the room; the longest
 * properties draw a quarter of their cases (`tests/domain/cases.ts`), or a folder of them takes an hour.
 */
export function tryChanges(root: string, room: string, ranges: string[], atOnce: number): Tried[] {
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
      mutate: [...new Set(ranges)],
      mutator: { excludedMutations },
      coverageAnalysis: 'perTest',
      ignoreStatic: true,
      concurrency: atOnce,
      reporters: ['json'],
      jsonReporter: { fileName: report },
      tempDirName: '.build/stryker',
      // TypeScript 7 has no programming interface to rewrite a tsconfig with; the sandbox needs none.
      tsconfigFile: 'none',
      ignorePatterns: ['.data', 'test-results', 'playwright-report'],
      timeoutMS: 40_000,
      dryRunTimeoutMinutes: 30,
      // The tests run without types, so nothing need be written into every file against them.
      disableTypeChecks: false,
    }),
  )
  const run = spawnSync(
    process.execPath,
    ['node_modules/@stryker-mutator/core/bin/stryker.js', 'run', config],
    {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, MUTATION_TESTS: testsOf(root, room).join(','), LUSTRUM_AGAIN: '1' },
    },
  )
  if (run.status !== 0) process.exit(run.status ?? 1)
  const { files } = JSON.parse(readFileSync(`${root}${report}`, 'utf8')) as {
    files: Record<string, { source: string; mutants: Mutant[] }>
  }
  return Object.entries(files).flatMap(([file, { source, mutants }]) =>
    mutants
      .filter(({ status }) => !['Ignored', 'CompileError', 'RuntimeError'].includes(status))
      .map(({ status, location, replacement = '', mutatorName }) => {
        const { line } = location.start
        const seen = status === 'NoCoverage' ? ' (no test runs it)' : ''
        const text = source.split('\n')[line - 1]?.trim() ?? ''
        return {
          file,
          key: keyOf(file, location.start, mutatorName, replacement),
          timedOut: status === 'Timeout',
          caught: status === 'Killed' || status === 'Timeout',
          words: `${file}:${line} ${mutatorName}${seen}: ${text}  ->  ${replacement.replaceAll(/\s+/g, ' ')}`,
        }
      }),
  )
}
