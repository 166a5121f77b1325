import { Refusal } from '../../domain/refusal.ts'

/** Refuses an order that leaves one out, names one twice or names a stranger: the list has changed meanwhile. */
export function checkOrder(asked: readonly string[], present: readonly string[]): void {
  const once = new Set(asked)
  const same = once.size === asked.length && once.size === present.length && present.every(id => once.has(id))
  if (!same)
    throw new Refusal(
      'stale',
      'ids',
      asked,
      'The list has changed meanwhile: look at it again, then repeat your change.',
    )
}
