import { Refusal } from '../../domain/refusal.ts'
import { layFloor, layShop, readFloor, readShop, variants } from '../../domain/schedule/index.ts'

/** Reads a case with `jobs`; the function it returns lays them all, for at most `limit` seconds. */
export function answerPlan(json: unknown, field: string, limit: number) {
  const floor = readFloor(json, field)
  return () => {
    const { last, seconds } = runFor(layFloor(floor), limit)
    const { objective, bound, proven, plan } = last
    const found = plan ? { objective, bound, proven, seconds, plan } : { feasible: false, proven, seconds }
    return { id: floor.id ?? null, ...found }
  }
}

interface Question {
  readonly instance: string | undefined
  readonly variant: string | undefined
  readonly limit: number
}

/** The shortest makespan of one of the job shops of a file, in one of the variants. */
export function answerInstance(json: unknown, { instance, variant: name, limit }: Question) {
  const variant = variants.find(one => one === name)
  if (!variant) throw new Refusal('bad-variant', '--variant', name, `give one of ${variants.join(', ')}`)
  const shop = readShop(json, instance!)
  const { last, seconds } = runFor(layShop(shop, variant), limit)
  const { costs, bound, proven, plan } = last
  const jobs = plan?.map((starts, j) => ({
    steps: starts.map((start, i) => {
      const [machine, minutes] = shop[j]![i]!
      return { bay: String(machine), start, end: start + minutes, crew: [] }
    }),
    handover: starts.at(-1)! + shop[j]!.at(-1)![1],
  }))
  return {
    id: instance,
    variant,
    objective: { makespan: costs?.[0] ?? null },
    bound: { makespan: bound[0] },
    proven,
    seconds,
    plan: jobs && Object.fromEntries(jobs.entries()),
  }
}

/** The last that a search came to within the seconds; a first plan is waited for, which takes a fraction of one. */
function runFor<T extends { readonly plan: unknown }>(
  search: Iterator<T, T>,
  limit: number,
): { readonly last: T; readonly seconds: number } {
  const started = performance.now()
  const seconds = () => (performance.now() - started) / 1000
  for (;;) {
    const { value, done } = search.next()
    if (done || (value.plan && seconds() >= limit))
      return { last: value, seconds: Number(seconds().toFixed(6)) }
  }
}
