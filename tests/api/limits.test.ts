import { expect, it } from 'vitest'
import { z } from 'zod'
import { inputOf } from './inputOf.ts'
import { procedures } from './procedures.ts'

type Shape = Record<string, unknown>

/** Longer than anybody types, larger than any file: what is past these counts as no limit. */
const most = { text: 25 * 1024 * 1024, list: 2_000, number: 1e15 }

/**
 * Names what in this JSON schema may be as long or as large as it likes. Read from what zod says about itself, so a
 * shape written by hand anywhere in a router is seen too.
 */
function unbounded(shape: unknown, at: string): string[] {
  if (typeof shape !== 'object' || shape === null) return []
  const { type, ...rest } = shape as Shape
  const within = (value: unknown, limit: number) => typeof value === 'number' && Math.abs(value) <= limit
  const found: string[] = []
  if (type === 'string' && !rest.enum && !('const' in rest) && !within(rest.maxLength, most.text))
    found.push(`${at}: a text without a longest`)
  if (type === 'array' && !within(rest.maxItems, most.list)) found.push(`${at}: a list without a longest`)
  if ((type === 'number' || type === 'integer') && !rest.enum && !('const' in rest)) {
    if (
      !within(rest.minimum ?? rest.exclusiveMinimum, Number.MAX_SAFE_INTEGER - 1) ||
      !within(rest.maximum, most.number)
    )
      found.push(`${at}: a number without a least and a most`)
  }
  // An input that nothing is known of is as open as one without a limit.
  if (Object.keys(shape).length === 0) found.push(`${at}: anything at all`)
  for (const key of ['properties', '$defs'] as const)
    for (const [name, inner] of Object.entries((rest[key] ?? {}) as Shape))
      found.push(...unbounded(inner, `${at}.${name}`))
  for (const key of ['items', 'additionalProperties', 'propertyNames'] as const)
    found.push(...unbounded(rest[key], `${at}[]`))
  for (const key of ['anyOf', 'oneOf', 'allOf'] as const)
    for (const inner of (rest[key] ?? []) as unknown[]) found.push(...unbounded(inner, at))
  return found
}

const jsonOf = (schema: z.ZodType) => z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })

it('nothing that may be asked is without a limit', () => {
  const all = Object.entries(procedures)
  expect(all.length).toBeGreaterThan(120)
  const found = all.flatMap(([path, procedure]) => {
    const input = inputOf(procedure)
    return input ? unbounded(jsonOf(input), path) : []
  })
  expect(found).toEqual([])
})

it('sees a text, a list, a number and anything at all without a limit, however deep', () => {
  const bad = z.object({
    a: z.string().optional(),
    b: z.array(z.object({ c: z.number().max(5) }).nullable()).max(5),
    d: z.array(z.boolean()),
    e: z.record(z.string().max(3), z.union([z.literal('x'), z.int()])),
    f: z.any(),
  })
  expect(unbounded(jsonOf(bad), 'it')).toEqual([
    'it.a: a text without a longest',
    'it.b[].c: a number without a least and a most',
    'it.d: a list without a longest',
    'it.e[]: a number without a least and a most',
    'it.f: anything at all',
  ])
})
