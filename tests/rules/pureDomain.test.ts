import { parseSync } from '@swc/core'
import { describe, expect, it } from 'vitest'
import { read, trackedFiles } from './trackedFiles.ts'

/** Names that read a clock, draw chance or reach outside; the domain is given all of that. */
const impureNames = [
  'process',
  'performance',
  'globalThis',
  'fetch',
  'setTimeout',
  'setInterval',
  'crypto',
  'console',
]
const impureMembers = ['Math.random', 'Temporal.Now', 'Date.now']

interface Node {
  type?: string
  value?: unknown
  object?: Node
  property?: Node
  [key: string]: unknown
}

/** What a source file names that the domain may not name. */
function impurities(code: string): string[] {
  const found = new Set<string>()
  const walk = (node: unknown, asProperty: boolean): void => {
    if (Array.isArray(node)) {
      for (const child of node) walk(child, false)
      return
    }
    if (node === null || typeof node !== 'object') return
    const { type, value, object, property } = node as Node
    if (type === 'Identifier' && !asProperty) {
      if (impureNames.includes(value as string)) found.add(value as string)
      if (value === 'Date') found.add('Date')
    }
    if (type === 'NewExpression') {
      const { callee, arguments: given } = node as { callee?: Node; arguments?: unknown[] }
      if (callee?.value === 'Date' && (given ?? []).length === 0) found.add('new Date()')
    }
    if (type === 'MemberExpression') {
      const member = `${object?.value}.${property?.value}`
      if (impureMembers.includes(member)) found.add(member)
    }
    for (const [key, child] of Object.entries(node)) {
      if (key === 'span') continue
      walk(child, (key === 'property' && type === 'MemberExpression') || key === 'key')
    }
  }
  walk(parseSync(code, { syntax: 'typescript', target: 'esnext' }).body, false)
  return [...found].sort()
}

/** The recurrence library computes in dates whose UTC fields are the calendar's; its wrapper makes them from day numbers. */
const allowed: Record<string, string[]> = { 'main/domain/upkeep/recurrence/library.ts': ['Date'] }

describe('the domain', () => {
  it.each(trackedFiles().filter(path => /^main\/domain\/.*\.ts$/.test(path)))(
    '%s names no clock, no chance and no Date',
    path => expect(impurities(read(path)).filter(name => !allowed[path]?.includes(name))).toEqual([]),
  )

  it.each([
    ['const today = new Date()', ['Date', 'new Date()']],
    ['export function f(day: Date): void {}', ['Date']],
    ['Math.random()', ['Math.random']],
    ['const { random } = Math; Math.max(1, 2)', []],
    ['Temporal.Now.instant()', ['Temporal.Now']],
    ["process.env.TZ = 'x'", ['process']],
    ['const day: Temporal.PlainDate = x.Date // Date, Math.random()', []],
    ['performance.now()', ['performance']],
  ])('would be refused, or not, for: %s', (code, expected) => expect(impurities(code)).toEqual(expected))
})
