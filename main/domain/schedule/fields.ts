import type { Span } from '../calendar/spans.ts'
import { say } from '../language/index.ts'
import { Refusal } from '../refusal.ts'

/**
 * Reading of untrusted JSON, field by field. Every reader takes the value and the path that names it, and throws a
 * Refusal for that path where the value will not do.
 */
export type Json = Readonly<Record<string, unknown>>

/** The value as the sentence of a refusal shows it: short, on one line. */
function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

function refuse(code: string, field: string, value: unknown, remedy: string): never {
  const what = value === undefined ? say('is missing') : say('{value} will not do', { value: shown(value) })
  throw new Refusal(code, field, value, `${what}; ${remedy}.`)
}

export function objectAt(value: unknown, field: string): Json {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse(value === undefined ? 'field-missing' : 'field-type', field, value, say('give an object'))
  return value as Json
}

/** A list, each item read by `read`; `absent` stands in where there is none. */
export function listAt<T>(
  value: unknown,
  field: string,
  read: (item: unknown, field: string) => T,
  absent?: T[],
): T[] {
  if (value == null && absent) return absent
  if (!Array.isArray(value))
    return refuse(value === undefined ? 'field-missing' : 'field-type', field, value, say('give a list'))
  return value.map((item, i) => read(item, `${field}.${i}`))
}

export function textAt(value: unknown, field: string): string {
  if (typeof value !== 'string' || value === '')
    return refuse(
      value === undefined ? 'field-missing' : 'field-type',
      field,
      value,
      say('give a name in quotes'),
    )
  return value
}

export function flagAt(value: unknown, field: string, absent?: boolean): boolean {
  if (value == null && absent !== undefined) return absent
  if (typeof value !== 'boolean')
    return refuse(
      value === undefined ? 'field-missing' : 'field-type',
      field,
      value,
      say('give true or false'),
    )
  return value
}

/** A whole number from `min` to `max`. */
export function wholeAt(value: unknown, field: string, min: number, max = Number.MAX_SAFE_INTEGER): number {
  const range =
    max === Number.MAX_SAFE_INTEGER
      ? say('of at least {min}', { min })
      : say('from {min} to {max}', { min, max })
  if (typeof value !== 'number' || !Number.isSafeInteger(value))
    return refuse(
      value === undefined ? 'field-missing' : 'field-type',
      field,
      value,
      say('give a whole number {range}', { range }),
    )
  if (value < min || value > max)
    return refuse('field-range', field, value, say('give a whole number {range}', { range }))
  return value
}

/** As `wholeAt`, but absent or null stays null. */
export function wholeOrNullAt(value: unknown, field: string, min: number): number | null {
  return value == null ? null : wholeAt(value, field, min)
}

/** A pair `[from, to]` with `from` before `to`. */
export function spanAt(value: unknown, field: string): Span {
  if (!Array.isArray(value) || value.length !== 2)
    return refuse('field-type', field, value, say('give a pair of minutes [from, to]'))
  const from = wholeAt(value[0], `${field}.0`, 0)
  const to = wholeAt(value[1], `${field}.1`, 0)
  if (to <= from) return refuse('span-empty', field, value, say('let it end after it begins'))
  return { from, to }
}

/** Spans that must not overlap each other, in any order. */
export function apartAt(value: unknown, field: string, absent?: Span[]): Span[] {
  const spans = listAt(value, field, spanAt, absent)
  const order = spans.map((_, i) => i).sort((a, b) => spans[a]!.from - spans[b]!.from)
  for (let i = 1; i < order.length; i++) {
    const span = spans[order[i]!]!
    const before = spans[order[i - 1]!]!
    if (span.from < before.to)
      refuse(
        'span-overlap',
        `${field}.${order[i]}`,
        [span.from, span.to],
        say('it overlaps [{from},{to}], so join the two or shorten one', {
          from: before.from,
          to: before.to,
        }),
      )
  }
  return spans
}

/** One of the names known from elsewhere in the problem. */
export function knownAt(value: unknown, field: string, known: ReadonlySet<string>, what: string): string {
  const name = textAt(value, field)
  if (!known.has(name))
    refuse(
      'name-unknown',
      field,
      name,
      say('give one of the {what}: {join}', { what, join: [...known].join(', ') }),
    )
  return name
}

/** Refuses the second of two items with the same id. */
export function distinctIds(items: readonly { readonly id: string }[], field: string): void {
  const seen = new Set<string>()
  items.forEach((item, i) => {
    if (seen.has(item.id)) refuse('name-twice', `${field}.${i}.id`, item.id, say('give every one its own id'))
    seen.add(item.id)
  })
}
