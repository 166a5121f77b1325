import { readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { type Row, register } from './register.ts'

/** One check value from outside the project, as its file gives it. */
export interface Case<Input = unknown, Expected = unknown> {
  readonly id: string
  readonly kind: string
  readonly input: Input
  readonly expected: Expected
  /** "exact", "absolute 1e-6" or "relative 1e-9", sometimes with words after it. */
  readonly tolerance: string
  readonly source: string
  readonly provenance: string
}

type Check = (entry: Case<never, never>) => void

/** The cases of a file of this folder; the second set says of each what kind it is. Job shops are kept by name. */
export function casesIn(file: string): (Omit<Case, 'kind'> & { kind?: string })[] {
  const content = JSON.parse(readFileSync(fileURLToPath(new URL(file, import.meta.url)), 'utf8'))
  return content.cases ?? Object.keys(content.instances ?? content.optima).map(id => ({ id }))
}

/** Whether a case falls under a row of the register. */
export function takes({ cases }: Row, entry: { id: string; kind?: string }): boolean {
  return cases.test(entry.kind ?? entry.id)
}

/**
 * All cases of a topic from both sets. The first set has no `kind`: `kindById` gives it from the start of the id, and an
 * id no pattern fits is an error, so that no case is passed over.
 */
export function casesOf(topic: string, kindById: readonly (readonly [RegExp, string])[]): Case[] {
  const first = casesIn(`${topic}.json`).map(entry => {
    const kind = kindById.find(([pattern]) => pattern.test(entry.id))?.[1]
    if (!kind) throw new Error(`${topic}.json: no kind is known for case ${entry.id}`)
    return { ...entry, kind }
  })
  return [...first, ...(casesIn(`sourced/${topic}.json`) as Case[])]
}

/**
 * Runs the cases of a topic whose kind has a check, and then holds what was run against the register, which says by hand
 * what this test file has to run.
 */
export function runCases(
  topic: string,
  kindById: readonly (readonly [RegExp, string])[],
  checks: Readonly<Record<string, Check>>,
): void {
  const cases = casesOf(topic, kindById)
  for (const [kind, check] of Object.entries(checks))
    describe(`${topic}: ${kind}`, () => {
      for (const entry of cases.filter(entry => entry.kind === kind))
        it(`${entry.id} [${entry.source}; ${entry.provenance}]`, () => {
          const { seen, unread } = watched(entry.expected)
          check({ ...entry, expected: seen } as Case<never, never>)
          expect(unread(), 'values of the case that the check never looked at').toEqual([])
        })
    })
  it(`${topic}: every case the register gives this file is run`, () => {
    const here = relative(process.cwd(), expect.getState().testPath ?? '')
    const given = register
      .filter(row => row.by === here)
      .flatMap(row => casesIn(row.file).filter(entry => takes(row, entry)))
      .map(({ id }) => id)
    const run = cases.filter(({ kind }) => kind in checks).map(({ id }) => id)
    expect(run.sort()).toEqual(given.sort())
  })
}

/** A value that notes which of its leaves were read, and the paths of those that were not. */
function watched(value: unknown): { seen: unknown; unread(): string[] } {
  const unread = new Set<string>()
  const wrap = (of: unknown, path: string): unknown => {
    if (typeof of !== 'object' || of === null) {
      unread.add(path)
      return of
    }
    const parts = new Map(Object.entries(of).map(([key, part]) => [key, wrap(part, `${path}.${key}`)]))
    return new Proxy(of, {
      get(target, key, receiver) {
        if (typeof key !== 'string' || !parts.has(key)) return Reflect.get(target, key, receiver)
        unread.delete(`${path}.${key}`)
        return parts.get(key)
      },
    })
  }
  const seen = wrap(value, 'expected')
  unread.delete('expected')
  return { seen, unread: () => [...unread] }
}

/**
 * Says of values of a case that no check holds them against the code, and why: what is refused altogether has no result,
 * and some are words for people.
 */
export function setAside(value: unknown, _because: string): void {
  JSON.stringify(value)
}

/** Expects a number within the tolerance its case gives. */
export function expectNear(actual: number, expected: number, tolerance: string): void {
  const [, how, amount] = /^(absolute|relative) ([\d.e+-]+)/.exec(tolerance) ?? []
  if (!how) return expect(actual).toBe(expected)
  const allowed = Number(amount) * (how === 'relative' ? Math.abs(expected) : 1)
  expect(Math.abs(actual - expected), `${actual} against ${expected}, ${tolerance}`).toBeLessThanOrEqual(allowed)
}
