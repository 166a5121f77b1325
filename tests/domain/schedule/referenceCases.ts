import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { readCase } from '../../../main/domain/schedule/readCase.ts'
import type { Objective, OfferKind, Problem } from '../../../main/domain/schedule/types.ts'

export interface ReferenceCase {
  readonly problem: Problem
  readonly optimal: Readonly<Record<OfferKind, Partial<Objective> & { feasible?: false; proven: boolean }>>
}

/** The eleven promise cases with the optima proven for them; tests/reference/README.md says by whom. */
export function promiseCases(): ReferenceCase[] {
  const path = fileURLToPath(new URL('../../reference/scheduling/promise.json', import.meta.url))
  const { cases } = JSON.parse(readFileSync(path, 'utf8')) as {
    cases: { optimal: ReferenceCase['optimal'] }[]
  }
  return cases.map(source => ({ problem: readCase(source), optimal: source.optimal }))
}
