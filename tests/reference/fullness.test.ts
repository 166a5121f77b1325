// Every value in this folder is held against the code by a named test, or listed with the reason why not.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { casesIn, takes } from './cases.ts'
import { register } from './register.ts'

const files = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
  .filter(file => file.endsWith('.json'))
  .sort()

it('the register knows every file', () => {
  expect([...new Set(register.map(({ file }) => file))].sort()).toEqual(files)
})

it.each(files)('every case of %s falls under one row', file => {
  const rows = register.filter(row => row.file === file)
  for (const entry of casesIn(file))
    expect([entry.id, rows.filter(row => takes(row, entry)).length]).toEqual([entry.id, 1])
})

describe.each(register)('$file, $cases', row => {
  it(`takes ${row.count} cases`, () => {
    expect(casesIn(row.file).filter(entry => takes(row, entry))).toHaveLength(row.count)
  })

  const { by } = row
  if (typeof by !== 'string') return
  it(`is asserted by ${by}`, () => {
    expect(existsSync(by)).toBe(true)
    const topic = row.file.replace(/^.*\/|\.json$/g, '')
    // By `runCases`, which counts what it runs, or by a file that reads the values itself.
    const runs = new RegExp(`(runCases|casesOf)\\(\\s*'${topic}'|/${row.file}'|(promise|floor)Cases\\(|shopCase\\(`)
    expect(readFileSync(by, 'utf8')).toMatch(runs)
  })
})
