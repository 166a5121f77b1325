import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const reference = join(root, 'tests/reference/scheduling/promise.json')
const folder = mkdtempSync(join(tmpdir(), 'solve-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function solve(...args: string[]) {
  return spawnSync(process.execPath, ['main/hosts/cli/solve.ts', ...args], { cwd: root, encoding: 'utf8' })
}

function written(name: string, content: unknown): string {
  const file = join(folder, name)
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content))
  return file
}

const { cases } = JSON.parse(readFileSync(reference, 'utf8'))

describe('solve --promise', () => {
  test('answers one case of a file with its objectives and plans', () => {
    const { stdout, status } = solve(reference, '--id', 'p01', '--promise')
    expect(status).toBe(0)
    const answer = JSON.parse(stdout)
    expect(answer.id).toBe('p01')
    const { proven, ...best } = cases[0].optimal.soonest
    expect(proven).toBe(true)
    expect(answer.offers.soonest.objective).toEqual(best)
    expect(answer.offers.soonest.plan.new.handover).toBe(best.handover)
    expect(answer.offers.soonest.plan.new.steps).toHaveLength(4)
    expect(answer.offers.soonest.reasons[0].text).toContain('not past its minimum')
  })

  test('answers all cases of a file as a list, and what nothing fits with why', () => {
    const { stdout } = solve(reference, '--promise')
    const answers = JSON.parse(stdout)
    expect(answers.map((one: { id: string }) => one.id)).toEqual(cases.map((one: { id: string }) => one.id))
    expect(answers.at(-1).offers.soonest).toMatchObject({ feasible: false, reasons: [{ code: 'horizon' }] })
  })

  test('answers a file that is one case', () => {
    const { stdout } = solve(written('one.json', cases[3]), '--promise')
    expect(JSON.parse(stdout).offers.leastBlocked.objective.blockedOpen).toBe(0)
  })
})

describe('what solve cannot read gets one line and exit status 2', () => {
  const broken = structuredClone(cases[0])
  broken.newJob.steps[2].minutes = -5
  const rows: [string, string[], RegExp][] = [
    ['a malformed case', [written('broken.json', broken), '--promise'], /newJob\.steps\.2\.minutes: -5 /],
    [
      'one among others',
      [written('two.json', { cases: [cases[1], broken] }), '--promise'],
      /cases\.1\.newJob\.steps\.2\.minutes/,
    ],
    ['no JSON', [written('not.json', '{"id": '), '--promise'], /is not JSON/],
    ['a missing file', [join(folder, 'none.json'), '--promise'], /cannot be read: ENOENT/],
    ['an unknown id', [reference, '--id', 'p99', '--promise'], /--id: no case is called p99/],
    ['an unknown flag', [reference, '--faster'], /'--faster'/],
    ['no question', [reference], /--promise: is missing/],
    ['no file', ['--promise'], /exactly one case file/],
  ]
  for (const [name, args, line] of rows)
    test(name, () => {
      const { stdout, stderr, status } = solve(...args)
      expect(status).toBe(2)
      expect(stdout).toBe('')
      expect(stderr).toMatch(line)
      expect(stderr.trimEnd().split('\n')).toHaveLength(1)
    })
})
