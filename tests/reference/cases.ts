import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

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

function casesIn(path: string): Omit<Case, 'kind'>[] {
  return JSON.parse(readFileSync(fileURLToPath(new URL(path, import.meta.url)), 'utf8')).cases
}

/**
 * All cases of a topic from both sets. The first set has no `kind`: `kindById` gives it from the start of the id, and an
 * id no pattern fits is an error, so that no case is passed over.
 */
export function casesOf(topic: string, kindById: readonly (readonly [RegExp, string])[]): Case[] {
  const first = casesIn(`./${topic}.json`).map(entry => {
    const kind = kindById.find(([pattern]) => pattern.test(entry.id))?.[1]
    if (!kind) throw new Error(`${topic}.json: no kind is known for case ${entry.id}`)
    return { ...entry, kind }
  })
  return [...first, ...(casesIn(`./sourced/${topic}.json`) as Case[])]
}

/**
 * Runs every case of a topic through the check for its kind. `elsewhere` names the kinds another test file runs; any
 * other kind without a check fails, as does a check no case reaches.
 */
export function runCases(
  topic: string,
  kindById: readonly (readonly [RegExp, string])[],
  checks: Readonly<Record<string, Check>>,
  elsewhere: readonly string[] = [],
): void {
  const cases = casesOf(topic, kindById).filter(entry => !elsewhere.includes(entry.kind))
  for (const [kind, check] of Object.entries(checks)) {
    const ofKind = cases.filter(entry => entry.kind === kind)
    describe(`${topic}: ${kind}`, () => {
      if (ofKind.length === 0) it('has a case', () => expect.unreachable(`no case of kind ${kind}`))
      for (const entry of ofKind)
        it(`${entry.id} [${entry.source}; ${entry.provenance}]`, () => check(entry as Case<never, never>))
    })
  }
  it(`${topic}: every kind is checked`, () => {
    expect([...new Set(cases.map(entry => entry.kind))].filter(kind => !(kind in checks))).toEqual([])
  })
}

/** Expects a number within the tolerance its case gives. */
export function expectNear(actual: number, expected: number, tolerance: string): void {
  const [, how, amount] = /^(absolute|relative) ([\d.e+-]+)/.exec(tolerance) ?? []
  if (!how) return expect(actual).toBe(expected)
  const allowed = Number(amount) * (how === 'relative' ? Math.abs(expected) : 1)
  expect(Math.abs(actual - expected), `${actual} against ${expected}, ${tolerance}`).toBeLessThanOrEqual(allowed)
}
