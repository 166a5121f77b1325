import { z } from 'zod'

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

/**
 * Grows inputs from a schema and then bends some: mostly of the right shape, so that they reach the services, with ids
 * of real rows among them. `ids` are those of the shop the calls are made on.
 */
export function bent(schema: z.ZodType, ids: readonly string[], random: () => number): unknown {
  const pick: Pick = of => of[Math.floor(random() * of.length)] as (typeof of)[number]
  const chance = (share: number) => random() < share

  function text(name: string, { maxLength = 4_000 }: { maxLength?: number }): string {
    if (/id$/i.test(name)) return chance(0.85) ? pick(ids) : pick(['none', 'x'.repeat(64), ''])
    if (/on$|date|since|^from$|^to$/i.test(name)) return chance(0.6) ? '2026-04-15' : pick(days)
    return chance(0.05)
      ? 'x'.repeat(Math.min(maxLength + 1, 5_000))
      : pick([...texts, ...days, ...ids.slice(0, 3)])
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
        return grown
      }
      case 'array':
        return Array.from({ length: pick([0, 1, 1, 2, 3]) }, () =>
          grow(shape.items as Shape, name.replace(/s$/, '')),
        )
      case 'string':
        return text(name, shape)
      case 'number':
      case 'integer':
        if (/version/.test(name) && chance(0.8)) return 1
        if (/At$/.test(name) && chance(0.7)) return 29_604_480 + Math.floor(random() * 2_000)
        return chance(0.3) ? Math.floor(random() * 100) : pick(numbers)
      case 'boolean':
        return chance(0.5)
      default:
        return null
    }
  }
  return grow(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Shape, '')
}
