import type { Span } from '../../main/domain/calendar/spans.ts'
import type { Person, Problem, Stay, Step } from '../../main/domain/schedule/types.ts'

const DAY = 1440
const DAYS = 180
/** The share of the time that is booked: near the end of it nothing is yet, as in any shop. */
const BOOKED = 0.85

/** A small seeded generator (mulberry32), so that every run of the bench sees the same shop. */
export function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** Weekdays 08:00 to 18:00 and Saturdays 09:00 to 14:00, from a Monday on. */
function openings(): Span[] {
  const open: Span[] = []
  for (let day = 0; day < DAYS; day++) {
    if (day % 7 < 5) open.push({ from: day * DAY + 480, to: day * DAY + 1080 })
    else if (day % 7 === 5) open.push({ from: day * DAY + 540, to: day * DAY + 840 })
  }
  return open
}

/** The two-layer coating job of the reference cases, washed and wiped first. */
const steps: readonly Step[] = [
  { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false },
  { kind: 'work', minutes: 360, needs: 'polish', skill: 'polish', crew: 1, split: true },
  { kind: 'work', minutes: 30, needs: 'clean', skill: 'coat', crew: 1, split: false },
  {
    kind: 'work',
    minutes: 90,
    needs: 'clean',
    sameBay: true,
    skill: 'coat',
    crew: 1,
    split: false,
    waitMax: 60,
  },
  { kind: 'hold', minutes: 60, needs: 'cure', sameBay: true, waitMin: 0, waitMax: 0 },
  {
    kind: 'work',
    minutes: 75,
    needs: 'clean',
    sameBay: true,
    skill: 'coat',
    crew: 1,
    split: false,
    waitMax: 180,
  },
  { kind: 'hold', minutes: 900, needs: 'cure', sameBay: true, waitMin: 0, waitMax: 0 },
]

/**
 * A shop booked for 180 days: every bay's opening time is cut into as many random cells as it has stays, each partly
 * filled by one (through nights and Sundays, as cures are), with somebody of the crew away for the first hours of it.
 */
export function bookedShop(bayCount: number, stayCount: number, seed = 7): Problem {
  const random = seeded(seed)
  const open = openings()
  const total = open.reduce((sum, span) => sum + span.to - span.from, 0)
  const minuteOf = (u: number): number => {
    let left = u
    for (const span of open) {
      if (left < span.to - span.from) return span.from + left
      left -= span.to - span.from
    }
    return open.at(-1)!.to
  }
  const kinds = [['wet', 'polish'], ['polish', 'clean', 'cure'], ['polish'], ['clean', 'cure']]
  const bays = Array.from({ length: bayCount }, (_, b) => ({
    id: `bay ${b + 1}`,
    can: kinds[b % 4]!,
    closed: [],
  }))
  const away: Span[][] = Array.from({ length: 6 }, () => [])
  const fixed: Stay[] = []
  for (let i = 0; i < stayCount; i++) {
    const bay = i % bayCount
    const perBay = Math.ceil(stayCount / bayCount)
    const cell = (total * BOOKED) / perBay
    const at = Math.floor(i / bayCount) * cell
    const length = Math.max(15, Math.min(900, cell * (0.3 + 0.5 * random())))
    const start = at + (cell - length) * random()
    const from = Math.round(minuteOf(Math.floor(start)) / 15) * 15
    const to = Math.round(minuteOf(Math.floor(start + length)) / 15) * 15
    if (from >= to) continue
    fixed.push({ bay: bays[bay]!.id, from, to })
    away[Math.floor(random() * away.length)]!.push({ from, to: Math.min(to, from + 180) })
  }
  const skills = [
    ['wash', 'polish'],
    ['polish', 'coat'],
    ['coat', 'wash'],
  ]
  const crew: Person[] = away.map((spans, p) => ({
    id: `person ${p + 1}`,
    skills: skills[p % 3]!,
    away: spans,
  }))
  const newJob = { id: 'new', release: 0, asked: 20 * DAY, steps }
  return { grid: 15, horizon: DAYS * DAY, open, bays, crew, fixed, newJob }
}
