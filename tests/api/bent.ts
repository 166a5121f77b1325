import { z } from 'zod'
import { type KnownRows, tablesFor } from './knownRows.ts'

/** Numbers in [0, 1) that are the same on every run (mulberry32, from memory). */
export function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

type Shape = { [key: string]: unknown }
type Pick = <T>(of: readonly T[]) => T

const days = ['2026-04-15', '2026-02-30', '1950-01-01', '2100-12-31', '9999-12-31', 'x', '']
const texts = [
  '',
  ' ',
  'x',
  'toString',
  '__proto__',
  "'; drop table Job; --",
  '1e308',
  '\u0000',
  '‮ü🚗',
  'a@example.com',
  'FREQ=DAILY',
]
const numbers = [
  0,
  1,
  -1,
  0.5,
  2,
  7,
  60,
  480,
  1440,
  1e6,
  -1e6,
  29_604_480,
  1e12,
  2 ** 31,
  Number.MAX_SAFE_INTEGER,
]
const wrong = [null, undefined, true, '', 'x', -1, 1e308, [], {}, [[]], { id: 1 }]

const shapes = new WeakMap<z.ZodType, Shape>()

function shapeOf(schema: z.ZodType): Shape {
  const shape =
    shapes.get(schema) ?? (z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Shape)
  shapes.set(schema, shape)
  return shape
}

/**
 * Grows inputs from a procedure's schema and then bends some: mostly of the right shape, so that they reach the
 * services, with rows of the shop among them and the versions these are at. `path` as in `jobs.get`.
 */
export function bent(
  { path, schema }: { path: string; schema: z.ZodType },
  known: KnownRows,
  random: () => number,
): unknown {
  const pick: Pick = of => of[Math.floor(random() * of.length)] as (typeof of)[number]
  const chance = (share: number) => random() < share
  const { versions, ids } = known

  function rowId(name: string): string {
    if (chance(0.1)) return pick([...ids, 'none', 'x'.repeat(64), ''])
    const stem = /^ids?$/.test(name) ? path.split('.')[0]! : name
    return pick(known.tables.get(pick(tablesFor(known, stem)) ?? '') ?? ['none'])
  }

  function text(name: string, { maxLength = 4_000 }: { maxLength?: number }): string {
    if (/ids?$/i.test(name)) return rowId(name)
    if (/on$|date|since|^from$|^to$/i.test(name)) return chance(0.6) ? '2026-04-15' : pick(days)
    return chance(0.05)
      ? 'x'.repeat(Math.min(maxLength + 1, 5_000))
      : pick([...texts, ...days, ...ids.slice(0, 3)])
  }

  /** The version of a row it names, so that it is not stale. */
  function fresh(grown: Shape): Shape {
    const named = Object.values(grown).find(value => typeof value === 'string' && versions.has(value))
    if ('version' in grown && named !== undefined && chance(0.85))
      grown.version = versions.get(named as string)
    return grown
  }

  function grow(shape: Shape, name: string): unknown {
    if (chance(0.03)) return pick(wrong)
    if ('const' in shape) return shape.const
    if (Array.isArray(shape.enum)) return pick(shape.enum)
    const choices = (shape.anyOf ?? shape.oneOf) as Shape[] | undefined
    if (choices) return grow(pick(choices), name)
    if (Array.isArray(shape.allOf))
      return Object.assign({}, ...(shape.allOf as Shape[]).map(part => grow(part, name)))
    switch (shape.type) {
      case 'object': {
        const required = (shape.required ?? []) as string[]
        const grown: Shape = {}
        for (const [key, inner] of Object.entries((shape.properties ?? {}) as { [key: string]: Shape }))
          if (required.includes(key) ? !chance(0.02) : chance(0.5)) grown[key] = grow(inner, key)
        if (typeof shape.additionalProperties === 'object') {
          const inner = shape.additionalProperties as Shape
          const keys = (shape.propertyNames as { enum?: string[] } | undefined)?.enum
          for (const key of keys ?? [pick(texts), 'en']) if (!chance(0.05)) grown[key] = grow(inner, key)
        }
        return fresh(grown)
      }
      case 'array':
        return Array.from({ length: pick([0, 1, 1, 2, 3]) }, () => grow(shape.items as Shape, name))
      case 'string':
        return text(name, shape)
      case 'number':
      case 'integer':
        if (/version/.test(name) && chance(0.8)) return pick([0, 1])
        if (/At$/.test(name) && chance(0.7)) return 29_604_480 + Math.floor(random() * 2_000)
        return chance(0.3) ? Math.floor(random() * 100) : pick(numbers)
      case 'boolean':
        return chance(0.5)
      default:
        return null
    }
  }
  return grow(shapeOf(schema), '')
}
