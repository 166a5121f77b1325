/**
 * Which bottle to take: first expired, first out. A bottle's date is the earlier of the printed one and, once opened,
 * its own; what is past it is not used. Among equal dates (and among goods that keep) an opened bottle goes before a
 * sealed one, then by lot id. An opened bottle's own date is nearly always the earliest, so in practice it is finished
 * first; where a sealed one would expire sooner still, leaving it behind would waste it.
 */
import { type Holding, usableOn } from './lot.ts'

export interface Taken {
  readonly lotId: string
  readonly centi: number
}

export interface Take {
  readonly use: readonly Taken[]
  /** What the usable lots could not give. */
  readonly shortCenti: number
}

/** Order of use. */
export function byLastDay(a: Holding, b: Holding): number {
  const dayA = a.lastDay ?? Number.POSITIVE_INFINITY
  const dayB = b.lastDay ?? Number.POSITIVE_INFINITY
  if (dayA !== dayB) return dayA - dayB
  if (a.opened !== b.opened) return a.opened ? -1 : 1
  return a.lotId < b.lotId ? -1 : a.lotId > b.lotId ? 1 : 0
}

/** Takes `needCenti` from the holdings usable on `day`, first expired first. `first` puts one lot before the others. */
export function takeFirstExpired(
  holdings: readonly Holding[],
  needCenti: number,
  day: number,
  first: string | null = null,
): Take {
  const usable = holdings.filter(holding => usableOn(holding, day)).sort(byLastDay)
  const ordered = first === null ? usable : [...usable].sort((a, b) => rank(a, first) - rank(b, first))
  const use: Taken[] = []
  let open = needCenti
  for (const holding of ordered) {
    if (open <= 0) break
    const centi = Math.min(holding.centi, open)
    use.push({ lotId: holding.lotId, centi })
    open -= centi
  }
  return { use, shortCenti: open }
}

function rank(holding: Holding, first: string): number {
  return holding.lotId === first ? 0 : 1
}
