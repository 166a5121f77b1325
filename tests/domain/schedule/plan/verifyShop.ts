import type { JobShop, ShopStarts, Variant } from '../../../../main/domain/schedule/plan/types.ts'

/** A judge of job shops, apart from the solver: all pairs of operations on a machine, straight from the definition. */
export function verifyShop(shop: JobShop, variant: Variant, starts: ShopStarts): string[] {
  const objections: string[] = []
  const blocking = variant.startsWith('blocking')
  const stays = shop.flatMap((job, j) =>
    job.map(([machine, minutes], i) => {
      const from = starts[j]![i]!
      const end = from + minutes
      const next = starts[j]![i + 1]
      if (from < 0) objections.push(`job ${j} before the beginning`)
      if (next !== undefined && next < end) objections.push(`job ${j}: operation ${i + 1} too soon`)
      if (variant === 'noWait' && next !== undefined && next !== end)
        objections.push(`job ${j} waits at ${i}`)
      return { j, i, machine, from, to: blocking ? (next ?? end) : end }
    }),
  )
  for (const a of stays)
    for (const b of stays)
      if (a.j < b.j && a.machine === b.machine && a.from < b.to && b.from < a.to)
        objections.push(`jobs ${a.j} and ${b.j} share machine ${a.machine}`)
  if (variant !== 'blockingNoSwap') return objections
  // Entering a machine waits for whoever leaves it at that minute to enter its own next one; nobody may wait for itself.
  let waiting = stays.filter(stay => stay.i > 0)
  for (;;) {
    const stuck = waiting.filter(enter =>
      stays.some(
        left =>
          left.machine === enter.machine &&
          left.j !== enter.j &&
          left.to === enter.from &&
          waiting.some(next => next.j === left.j && next.i === left.i + 1 && next.from === enter.from),
      ),
    )
    if (stuck.length === waiting.length) break
    waiting = stuck
  }
  return [...objections, ...waiting.map(one => `job ${one.j} changes places at ${one.from}`)]
}
