import type { LayerView, LifeView, TimelineEntry } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { ChartSize } from '../../parts/Chart.tsx'

/** One thing that happened to a car, or will. */
export interface CarMoment {
  on: string
  kind: TimelineEntry['kind'] | 'coming'
  words: string
}

export interface CarLineFacts {
  today: string
  moments: readonly CarMoment[]
  layers: readonly Pick<LayerView, 'productName' | 'stage' | 'laidOn'>[]
  /** The life of what lies on the car now; its curve is drawn where its product lies. */
  life: Pick<LifeView, 'productName' | 'curve'> | null
}

/** Moments too close for a finger stand together. */
export interface Spot {
  x: number
  moments: readonly CarMoment[]
  /** All of it is still to come. */
  coming: boolean
  /** A word or two beneath, where there is room for it: 0 is the upper row. */
  label: { words: string; row: 0 | 1; fromX: number; toX: number; anchor: 'start' | 'end' } | null
}

export interface Band {
  stage: 'coat' | 'topper'
  words: string
  fromX: number
  toX: number
  /** The part until today and the part after, as paths. */
  past: string
  ahead: string
  y: number
  /** Whether there is room for its words before the next begins. */
  named: boolean
}

export interface CarLineShape {
  height: number
  leftX: number
  rightX: number
  topY: number
  spotY: number
  floorY: number
  todayX: number
  bands: Band[]
  spots: Spot[]
  ticks: { x: number; label: string }[]
}

/** What happened, in a word, the weightiest first: what names a spot where several stand together. */
const shortWords: readonly (readonly [CarMoment['kind'], string])[] = [
  ['coming', ''],
  ['coat', say('coated')],
  ['topper', say('topper')],
  ['sold', say('sold')],
  ['hands', say('new owner')],
  ['job', say('job')],
  ['visit', say('visit')],
  ['inspection', say('looked at')],
  ['away', say('away')],
  ['skipped', say('skipped')],
  ['moved', say('moved')],
  ['reminder', say('reminded')],
]

/** A car's whole life on one line: what lies on it above, what happened and what comes on the line itself. */
export function carLine(
  { today, moments, layers, life }: CarLineFacts,
  { width, rem }: ChartSize,
): CarLineShape {
  const dayOf = (on: string) => Temporal.PlainDate.from(today).until(on, { largestUnit: 'days' }).days
  const days = [...moments.map(each => dayOf(each.on)), ...layers.map(each => dayOf(each.laidOn))]
  const from = Math.min(-60, ...days)
  const to = Math.max(60, ...days)
  const [leftX, rightX] = [1.4 * rem, Math.max(3 * rem, width - 1.4 * rem)]
  const x = (day: number) => round(leftX + ((day - from) / (to - from)) * (rightX - leftX))
  const rows = { coat: 2.6 * rem, topper: 4.3 * rem }
  const spotY = 7.2 * rem
  const floorY = 10.4 * rem
  return {
    height: floorY + 1.6 * rem,
    leftX,
    rightX,
    topY: 1.2 * rem,
    spotY,
    floorY,
    todayX: x(0),
    bands: bandsOf(layers, life, { dayOf, x, to, rows, rem }),
    spots: labelled(
      spotsOf(moments, on => x(dayOf(on)), rem),
      { rem, leftX: 0, rightX: width },
    ),
    ticks: ticksOf(today, from, to, x, rem),
  }
}

interface Place {
  dayOf(on: string): number
  x(day: number): number
  to: number
  rows: { coat: number; topper: number }
  rem: number
}

function bandsOf(layers: CarLineFacts['layers'], life: CarLineFacts['life'], place: Place): Band[] {
  return (['coat', 'topper'] as const).flatMap(stage => {
    const laid = new Map<string, { productName: string; day: number; count: number }>()
    for (const layer of layers.filter(each => each.stage === stage)) {
      const key = `${layer.laidOn} ${layer.productName}`
      const count = (laid.get(key)?.count ?? 0) + 1
      laid.set(key, { productName: layer.productName, day: place.dayOf(layer.laidOn), count })
    }
    const sorted = [...laid.values()].sort((a, b) => a.day - b.day)
    return sorted.map((one, i) => {
      const until = sorted[i + 1]?.day ?? place.to
      const words = one.count === 1 ? one.productName : `${one.count} × ${one.productName}`
      const [fromX, toX] = [place.x(one.day), place.x(until)]
      return {
        stage,
        words,
        fromX,
        toX,
        y: place.rows[stage],
        named: toX - fromX > wide(words, place.rem),
        ...pathsOf(one, until, stage, life, place),
      }
    })
  })
}

/** A layer as its learned life has it, falling by the share of such that still work; else level. */
function pathsOf(
  { productName, day }: { productName: string; day: number },
  until: number,
  stage: 'coat' | 'topper',
  life: CarLineFacts['life'],
  { x, rows, rem }: Place,
): { past: string; ahead: string } {
  const top = rows[stage]
  const curve = life && life.productName === productName ? life.curve : []
  const heightAt = (age: number) => {
    const after = curve.findIndex(point => point.age >= age)
    const share = curve.length === 0 ? 1 : (curve[after] ?? curve.at(-1)!).share
    return round(top + (1 - share) * 1.7 * rem)
  }
  const steps = curve.length === 0 ? 1 : 24
  const path = (from: number, to: number) =>
    to <= from
      ? ''
      : `M${Array.from({ length: steps + 1 }, (_, i) => {
          const at = from + ((to - from) * i) / steps
          return `${x(at)} ${heightAt(at - day)}`
        }).join('L')}`
  return { past: path(day, Math.min(until, 0)), ahead: path(Math.max(day, 0), until) }
}

function spotsOf(
  moments: readonly CarMoment[],
  xOf: (on: string) => number,
  rem: number,
): Omit<Spot, 'label'>[] {
  const apart = Math.max(44, 2.4 * rem)
  const spots: { xs: number[]; moments: CarMoment[] }[] = []
  for (const moment of [...moments].sort((a, b) => a.on.localeCompare(b.on))) {
    spots.push({ xs: [xOf(moment.on)], moments: [moment] })
    // What joins moves the spot's middle, which may bring it too close to the one before.
    for (
      let last = spots.at(-1), before = spots.at(-2);
      last && before;
      last = spots.at(-1), before = spots.at(-2)
    ) {
      if (middle(last.xs) - middle(before.xs) >= apart) break
      before.xs.push(...last.xs)
      before.moments.push(...last.moments)
      spots.pop()
    }
  }
  return spots.map(({ xs, moments }) => ({
    x: middle(xs),
    moments,
    coming: moments.every(each => each.kind === 'coming'),
  }))
}

const middle = (xs: readonly number[]) => round((Math.min(...xs) + Math.max(...xs)) / 2)

/** The words beneath the spots, what is to come first, in two rows; none where they would lie over others. */
function labelled(
  spots: readonly Omit<Spot, 'label'>[],
  { rem, leftX, rightX }: { rem: number; leftX: number; rightX: number },
): Spot[] {
  const taken: NonNullable<Spot['label']>[] = []
  const labels = new Map<Omit<Spot, 'label'>, Spot['label']>()
  for (const spot of [...spots].sort((a, b) => weight(a) - weight(b))) {
    const words = spotWords(spot)
    const room = wide(words, rem)
    const options = ([0, 1] as const).flatMap(row =>
      (['start', 'end'] as const).map(anchor => ({
        words,
        row,
        anchor,
        fromX: anchor === 'start' ? spot.x - 0.4 * rem : spot.x + 0.4 * rem - room,
        toX: anchor === 'start' ? spot.x - 0.4 * rem + room : spot.x + 0.4 * rem,
      })),
    )
    const free = options.find(
      one =>
        one.fromX >= leftX &&
        one.toX <= rightX &&
        taken.every(other => other.row !== one.row || one.toX <= other.fromX || other.toX <= one.fromX),
    )
    if (free) taken.push(free)
    labels.set(spot, free ?? null)
  }
  return spots.map(spot => ({ ...spot, label: labels.get(spot) ?? null }))
}

const kindOf = ({ moments }: Pick<Spot, 'moments'>) =>
  shortWords.findIndex(([kind]) => moments.some(moment => moment.kind === kind))

const weight = kindOf

function spotWords(spot: Pick<Spot, 'moments'>): string {
  const [kind, words] = shortWords[kindOf(spot)]!
  return kind === 'coming' ? spot.moments.find(each => each.kind === kind)!.words : words
}

/** About as wide as so many letters are drawn, with room around. */
const wide = (words: string, rem: number) => (words.length * 0.47 + 0.8) * rem

/** The years; months where there are few years, whole ones from the first. */
function ticksOf(
  today: string,
  from: number,
  to: number,
  x: (day: number) => number,
  rem: number,
): CarLineShape['ticks'] {
  const start = Temporal.PlainDate.from(today).add({ days: from })
  const years = Math.ceil((to - from) / 366)
  const every = Math.max(1, Math.ceil((4 * rem * years) / Math.max(1, x(to) - x(from))))
  return Array.from({ length: years + 1 }, (_, i) => start.year + i)
    .filter((_, i) => i % every === 0)
    .flatMap(year => {
      const first = Temporal.PlainDate.from({ year, month: 1, day: 1 })
      const at = Temporal.PlainDate.from(today).until(first, { largestUnit: 'days' }).days
      if (at > to) return []
      return [{ x: Math.max(x(Math.max(at, from)), 0), label: String(year) }]
    })
}

const round = (value: number) => Math.round(value * 10) / 10
