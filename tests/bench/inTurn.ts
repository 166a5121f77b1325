/** What rivals take beside each other, so that neither runs on a colder machine than the other. */

/** One piece of work; gives the ms that count of it. */
export type Timed = () => number | Promise<number>

/** A work of which all counts. What it gives is looked at, so that no round is optimised away. */
export function whole(work: () => number): Timed {
  return () => {
    const start = performance.now()
    const used = work()
    const ms = performance.now() - start
    if (!Number.isFinite(used)) throw new Error('the work came to nothing')
    return ms
  }
}

/**
 * The middle of the times of each rival, in ms. Each is run once or more before it counts, then all of them round after
 * round, each round in the other order.
 */
export async function inTurn<Name extends string>(
  rivals: Readonly<Record<Name, Timed>>,
  { rounds, warmUps = 1 }: { rounds: number; warmUps?: number },
): Promise<Record<Name, number>> {
  const names = Object.keys(rivals) as Name[]
  const times = new Map<Name, number[]>(names.map(name => [name, []]))
  for (let round = -warmUps; round < rounds; round++)
    for (const name of round % 2 === 0 ? names : names.toReversed()) {
      const ms = await rivals[name]()
      if (round >= 0) times.get(name)!.push(ms)
    }
  const middle = (all: number[]) => all.sort((a, b) => a - b)[all.length >> 1]!
  return Object.fromEntries(names.map(name => [name, middle(times.get(name)!)])) as Record<Name, number>
}
