import { questions } from '../data/saving.ts'
import { faultOf } from '../data/trpc.ts'

export interface Faults {
  /** The words for one field, such as "steps.2.minutes"; undefined when it is fine. */
  at(field: string): string | undefined
  /** The same for a field or anything beneath it. */
  under(field: string): string | undefined
  /** The words that belong to none of the fields asked for so far. */
  rest(): string | null
  /** The row was saved by another window meanwhile. */
  stale: boolean
}

/**
 * Spreads a refusal over a form: each field asks for its own words while it is drawn, and what no field has taken is left
 * for a note. A refusal that is a question is asked elsewhere and gives no words here.
 */
export function faultsOf(error: unknown): Faults {
  if (!error) return noFaults
  const fault = faultOf(error)
  if (fault.reason !== null && fault.reason in questions) return noFaults
  // Another window's save concerns the whole form, even where the row is named like one of its fields.
  if (fault.reason === 'stale') return { ...noFaults, rest: () => fault.message, stale: true }
  const words = fault.field ? withoutPath(fault.message, fault.field) : fault.message
  let taken = false
  const take = (here: boolean) => {
    if (here) taken = true
    return here ? words : undefined
  }
  return {
    at: field => take(fault.field === field),
    under: field => take(fault.field === field || (fault.field?.startsWith(`${field}.`) ?? false)),
    rest: () => (taken ? null : words),
    stale: false,
  }
}

const noFaults: Faults = { at: () => undefined, under: () => undefined, rest: () => null, stale: false }

/** The api names the field before a wrong shape's words; beside the field that says it twice. */
function withoutPath(message: string, field: string): string {
  const first = message.startsWith(`${field}: `) ? message.slice(field.length + 2).split('; ')[0] : undefined
  return first ?? message
}
