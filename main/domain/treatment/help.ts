/** The people who come to a step for a part of it, as several templates ask for them and one car needs them. */
import type { Help } from '../schedule/types.ts'
import type { TreatmentStep } from '../shop/index.ts'

type Asking = Pick<TreatmentStep, 'help'>

/** What serves both: as many as the greater, from the earlier until the later end. */
export function bothHelped({ help: a }: Asking, { help: b }: Asking): Help | null {
  if (!a || !b) return a ?? b ?? null
  const from = Math.min(a.from, b.from)
  const minutes = Math.max(a.from + a.minutes, b.from + b.minutes) - from
  return { crew: Math.max(a.crew, b.crew), from, minutes }
}

/** The help of a step that takes `stepMin` minutes on this car: what of it lies within; null where nothing does. */
export function helpWithin({ help }: Asking, stepMin: number): Help | null {
  if (!help || help.from >= stepMin) return null
  return { ...help, minutes: Math.min(help.minutes, stepMin - help.from) }
}
