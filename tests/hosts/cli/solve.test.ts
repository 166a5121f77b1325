import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const inReference = (name: string) => join(root, 'tests/reference/scheduling', name)
const reference = inReference('promise.json')
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
const medium = JSON.parse(readFileSync(inReference('medium.json'), 'utf8'))

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
    expect(answer.offers.soonest.reasons[0].text).toContain('runs until')
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

describe('solve --plan', () => {
  test('lays the whole floor of a case and says that nothing is better', () => {
    const { stdout, status } = solve(inReference('small.json'), '--id', 's08', '--plan', '--limit', '20')
    expect(status).toBe(0)
    const { id, objective, bound, proven, seconds, plan } = JSON.parse(stdout)
    expect([id, proven]).toEqual(['s08', true])
    expect(objective).toEqual({ weightedTardiness: 570, blockedOpen: 360, moves: 3 })
    expect(bound).toEqual(objective)
    expect(seconds).toBeLessThan(20)
    expect(Object.keys(plan)).toHaveLength(4)
    expect(plan.j1.steps[0]).toMatchObject({ bay: 'A', start: expect.any(Number), crew: ['p1'] })
  })

  test('stops at its limit with what it has, all cases of a file as a list', () => {
    const file = written('weeks.json', { cases: medium.cases.slice(3, 5) })
    const { stdout } = solve(file, '--plan', '--limit', '0.001')
    const answers = JSON.parse(stdout)
    expect(answers.map((one: { id: string; proven: boolean }) => [one.id, one.proven])).toEqual([
      ['m04', false],
      ['m05', false],
    ])
    expect(answers[0].objective.weightedTardiness).toBeGreaterThanOrEqual(2640)
    expect(answers[0].bound.weightedTardiness).toBeLessThanOrEqual(2640)
  })

  test('says so where nothing fits', () => {
    const [one] = JSON.parse(readFileSync(inReference('small.json'), 'utf8')).cases
    const { stdout } = solve(written('shut.json', { ...one, open: [[480, 500]] }), '--plan')
    expect(JSON.parse(stdout)).toMatchObject({ id: 's01', feasible: false, proven: true })
  })
})

test('solve --instance answers a classic job shop in the variant asked for', () => {
  const { stdout } = solve(inReference('instances.json'), '--instance', 'ft06', '--variant', 'blockingNoSwap')
  const { id, objective, bound, proven, plan } = JSON.parse(stdout)
  expect({ id, objective, bound, proven }).toEqual({
    id: 'ft06',
    objective: { makespan: 69 },
    bound: { makespan: 69 },
    proven: true,
  })
  expect(plan[0].steps.map((step: { bay: string }) => step.bay).join('')).toBe('201354')
  expect(plan[0].steps[1].end - plan[0].steps[1].start).toBe(3)
})

describe('what solve cannot read gets one line and exit status 2', () => {
  const broken = structuredClone(cases[0])
  broken.newJob.steps[2].minutes = -5
  const shops = inReference('instances.json')
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
    ['two questions', [reference, '--promise', '--plan'], /--plan: cannot be asked with --promise/],
    ['a limit that is none', [reference, '--plan', '--limit', 'soon'], /--limit: give seconds/],
    [
      'a case without jobs',
      [written('jobless.json', { ...cases[0], jobs: undefined }), '--plan'],
      /jobs: is missing/,
    ],
    [
      'an unknown instance',
      [shops, '--instance', 'ft99', '--variant', 'noWait'],
      /no instance is called ft99; there is ft06/,
    ],
    [
      'an unknown variant',
      [shops, '--instance', 'ft06', '--variant', 'swap'],
      /--variant: give one of classic/,
    ],
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
