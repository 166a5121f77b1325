import type { z } from 'zod'

/** The schema of what a procedure takes; undefined where it takes nothing. */
export function inputOf(procedure: object): z.ZodType | undefined {
  const { _def } = procedure as { _def?: { inputs?: unknown[] } }
  return _def?.inputs?.at(-1) as z.ZodType | undefined
}

/** Whether it is a query, a mutation or a subscription. */
export function typeOf(procedure: object): string | undefined {
  return (procedure as { _def?: { type?: string } })._def?.type
}
