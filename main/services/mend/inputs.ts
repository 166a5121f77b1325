/** What recording a sick person or a bay that is down, and mending what it touches, is sent. */
import { z } from 'zod'
import { id, minute, text, version } from '../desk/inputs.ts'

const from = { fromAt: minute, toAt: minute, reason: text }

/** Somebody is away, or a bay cannot be used, from a minute on. */
export const outInput = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('person'), crewId: id, ...from }),
  z.object({ kind: z.literal('bay'), bayId: id, ...from }),
])
export type OutInput = z.infer<typeof outInput>

export const ways = ['person', 'bay', 'push', 'time'] as const

/** One car and its way out, as it was seen; more than a shop has at once are not mended in one act. */
export const mendInput = z.object({
  cars: z
    .array(z.object({ jobId: id, version, way: z.enum(ways) }))
    .min(1)
    .max(60),
})
export type MendInput = z.infer<typeof mendInput>
