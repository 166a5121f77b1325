import { readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, it } from 'vitest'
import { faultFile, keptFaults, noteFault } from '../../main/store/faultLog.ts'
import { makeFolder } from './openDatabase.ts'

/** An error as one of the app's comes up, with what somebody typed in its words, its cause and its fields. */
function personalFault(): Error {
  const typed = 'Ansel Mirrow, +1 202 555 0110, ansel@example.com, QHV 200'
  const cause = Object.assign(new RangeError(`No such moment:\n    at ${typed} (file:///x.ts:1:1)`), {
    code: typed,
    detail: typed,
  })
  return new Error(`Could not keep ${typed}\n at ${typed}`, { cause })
}

const personal = /Ansel|Mirrow|202|0110|example\.com|QHV/

it('keeps the kind of a fault and its places in the program, and nothing anybody typed', () => {
  const dir = makeFolder()
  noteFault(dir, 29_604_480, personalFault(), 'customers.save')
  noteFault(dir, 29_604_481, 'Ansel Mirrow', '/customers?text=Ansel Mirrow')
  const [second, first] = keptFaults(dir, 10)
  expect(second).toEqual({ at: 29_604_481, asked: '', kind: 'string', places: [] })
  expect(first).toMatchObject({ at: 29_604_480, asked: 'customers.save', kind: 'Error < RangeError' })
  // The folder it all lies in may be called as one of the program's.
  expect(first!.places[0]).toMatch(/^((main|app)\/tests\/store\/)?faultLog\.test\.ts:\d+:\d+$/)
  expect(readFileSync(faultFile(dir), 'utf8')).not.toMatch(personal)
  expect(readFileSync(faultFile(dir), 'utf8')).not.toContain(dirname(import.meta.dirname))
})

it('leaves out where the program lies, whatever the folders there are called', () => {
  const dir = makeFolder()
  const fault = new Error('x')
  fault.stack = 'Error: x\n    at go (file:///home/app/ansel/main/lustrum/main/services/job/cover.ts:20:7)'
  noteFault(dir, 1, fault)
  expect(keptFaults(dir, 1)[0]!.places).toEqual(['main/services/job/cover.ts:20:7'])
})

it('keeps the code of a database or of the system, which says most', () => {
  const dir = makeFolder()
  noteFault(dir, 1, Object.assign(new Error('no room for Ansel'), { code: 'ENOSPC' }))
  expect(keptFaults(dir, 1)[0]!.kind).toBe('Error ENOSPC')
})

it('keeps the newest and stays small', () => {
  const dir = makeFolder()
  const fault = personalFault()
  for (let at = 1; at <= 2_000; at++) noteFault(dir, at, fault, 'jobs.get')
  const sizes = ['faults.log', 'faults.older.log'].map(name => statSync(join(dir, name)).size)
  expect(Math.max(...sizes)).toBeLessThan(130 * 1024)
  const kept = keptFaults(dir, 50).map(({ at }) => at)
  expect(kept).toEqual(Array.from({ length: 50 }, (_, i) => 2_000 - i))
})

it('passes over a line cut off, and a folder that cannot be written', () => {
  const dir = makeFolder()
  noteFault(dir, 1, new Error('first'))
  writeFileSync(faultFile(dir), '{"at":2,"as', { flag: 'a' })
  expect(keptFaults(dir, 9).map(({ at }) => at)).toEqual([1])
  noteFault(join(dir, 'gone'), 3, new Error('later'))
  expect(keptFaults(join(dir, 'gone'), 9)).toEqual([])
})
