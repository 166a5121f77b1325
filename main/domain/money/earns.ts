/** What work earns a bay hour, the hours a car only stood there included. */
import { allocate } from './allocate.ts'
import { sumMinor } from './minor.ts'

/** One visit that is over. */
export interface EarnedVisit {
  /** `YYYY-MM` of its handover. */
  readonly month: string
  /** What each treatment, or the extras together, brought in without tax. */
  readonly sold: readonly { readonly name: string; readonly minor: number }[]
  readonly chemicalsMinor: number
  /** Hands-on minutes by who did them. */
  readonly workedMin: ReadonlyMap<string, number>
  /** What an hour of work costs. */
  readonly labourMinor: number
  /** Opening minutes it kept a bay, blocked ones included. */
  readonly bayMin: number
  /** Of those, the minutes in which nobody worked on it. */
  readonly blockedMin: number
  /** Minutes of cure outside the opening hours: a bay was free of them. */
  readonly overnightMin: number
}

export interface Earned {
  readonly name: string
  readonly visits: number
  readonly revenueMinor: number
  readonly chemicalsMinor: number
  readonly labourMinor: number
  /** Revenue less chemicals and labour. */
  readonly contributionMinor: number
  readonly bayMin: number
  readonly blockedMin: number
  /** Contribution for each hour of a bay; null where no bay was kept. */
  readonly perBayHourMinor: number | null
  /** Too few visits to lean on. */
  readonly few: boolean
}

export interface Earnings {
  readonly treatments: readonly Earned[]
  readonly crew: readonly Earned[]
  readonly months: readonly Earned[]
  readonly whole: Earned
  readonly overnightMin: number
  /** What the cures outside opening hours would have cost in bay time, at what a bay hour earned; null: not known. */
  readonly overnightMinor: number | null
}

/** Fewer visits than this say little about the next one: common practice, no source. */
const enough = 5

interface Part {
  visits: number
  revenueMinor: number
  chemicalsMinor: number
  labourMinor: number
  bayMin: number
  blockedMin: number
}

/**
 * Adds visits up by treatment, by who worked and by month. What belongs to a visit as a whole is shared out exactly: over
 * its treatments by what each brought in, over the crew by the minutes each worked; so each of the three sums to the whole.
 */
export function earnings(visits: readonly EarnedVisit[]): Earnings {
  const treatments = new Map<string, Part>()
  const crew = new Map<string, Part>()
  const months = new Map<string, Part>()
  const whole: Part = empty()
  for (const visit of visits) {
    const part = partOf(visit)
    add(whole, part)
    add(of(months, visit.month), part)
    const { sold, workedMin } = visit
    split(
      treatments,
      part,
      sold.map(each => each.name),
      sold.map(each => each.minor),
    )
    split(crew, part, [...workedMin.keys()], [...workedMin.values()])
  }
  const all = earned('', whole)
  const overnightMin = visits.reduce((sum, visit) => sum + visit.overnightMin, 0)
  return {
    treatments: listed(treatments).sort(byHour),
    crew: listed(crew).sort(byHour),
    months: listed(months).sort((a, b) => a.name.localeCompare(b.name)),
    whole: all,
    overnightMin,
    overnightMinor:
      all.perBayHourMinor === null
        ? null
        : Math.round((overnightMin / 60) * Math.max(0, all.perBayHourMinor)),
  }
}

const empty = (): Part => ({
  visits: 0,
  revenueMinor: 0,
  chemicalsMinor: 0,
  labourMinor: 0,
  bayMin: 0,
  blockedMin: 0,
})

function partOf({ sold, chemicalsMinor, workedMin, labourMinor, bayMin, blockedMin }: EarnedVisit): Part {
  const worked = [...workedMin.values()].reduce((sum, minutes) => sum + minutes, 0)
  return {
    visits: 1,
    revenueMinor: sumMinor(sold.map(each => each.minor)),
    chemicalsMinor: Math.round(chemicalsMinor),
    labourMinor: Math.round((worked * labourMinor) / 60),
    bayMin,
    blockedMin,
  }
}

function of(parts: Map<string, Part>, name: string): Part {
  const part = parts.get(name) ?? empty()
  parts.set(name, part)
  return part
}

function add(to: Part, part: Part): void {
  for (const key of Object.keys(to) as (keyof Part)[]) to[key] += part[key]
}

/** Shares a visit out over several names by weight; equally where none weighs anything. */
function split(
  parts: Map<string, Part>,
  part: Part,
  names: readonly string[],
  weights: readonly number[],
): void {
  if (names.length === 0) return
  if (names.length === 1) {
    add(of(parts, names[0]!), part)
    return
  }
  const by = weights.some(weight => weight > 0)
    ? weights.map(weight => Math.max(0, weight))
    : weights.map(() => 1)
  for (const key of ['revenueMinor', 'chemicalsMinor', 'labourMinor', 'bayMin', 'blockedMin'] as const)
    allocate(part[key], by).forEach((share, i) => {
      of(parts, names[i]!)[key] += share
    })
  for (const name of new Set(names)) of(parts, name).visits += 1
}

function earned(name: string, part: Part): Earned {
  const contributionMinor = part.revenueMinor - part.chemicalsMinor - part.labourMinor
  return {
    name,
    ...part,
    contributionMinor,
    perBayHourMinor: part.bayMin > 0 ? Math.round((contributionMinor * 60) / part.bayMin) : null,
    few: part.visits < enough,
  }
}

const listed = (parts: ReadonlyMap<string, Part>) => [...parts].map(([name, part]) => earned(name, part))

const byHour = (a: Earned, b: Earned) =>
  (b.perBayHourMinor ?? -Infinity) - (a.perBayHourMinor ?? -Infinity) || a.name.localeCompare(b.name)
