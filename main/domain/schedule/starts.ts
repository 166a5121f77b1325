import type { Span } from '../calendar/spans.ts'
import { firstAtLeast, openBefore } from './openTime.ts'
import { addPart, noPieces, type Pieces } from './pieces.ts'
import { gridCeil, gridFloor, type Prepared } from './prepare.ts'
import type { Step, Work } from './types.ts'

/**
 * Where a step may start, as far as opening hours, crew and its own pins go, whatever the bay: sorted disjoint
 * inclusive ranges of grid points. `length` is what to add to a start to get its end; it is constant in a range,
 * and grows from range to range where a split step crosses a closing.
 */
export interface Starts {
  readonly from: number[]
  readonly to: number[]
  readonly length: number[]
}

/** The feasible starts of `step` between the minutes `lo` and `hi`, its end at or before `hi`. */
export function startsOf(prepared: Prepared, step: Step, lo: number, hi: number): Starts {
  const starts: Starts = { from: [], to: [], length: [] }
  const earliest = Math.max(lo, step.startFrom ?? lo)
  const latest = Math.min(hi, step.startTo ?? hi)
  const add = (from: number, to: number, length: number) => {
    const k0 = gridCeil(prepared, Math.max(from, earliest))
    const k1 = gridFloor(prepared, Math.min(to, latest, hi - length))
    if (k0 > k1) return
    const last = starts.to.length - 1
    if (last >= 0 && starts.to[last] === k0 - 1 && starts.length[last] === length) starts.to[last] = k1
    else {
      starts.from.push(k0)
      starts.to.push(k1)
      starts.length.push(length)
    }
  }
  if (step.kind === 'hold') add(lo, hi, step.minutes)
  else if (step.split)
    for (const { from, to, length } of splitStarts(prepared, step, earliest, hi)) add(from, to, length)
  else
    for (const range of startRanges(freeOf(prepared, step, lo, hi), step.minutes, teamSize(step)))
      add(range.from, range.to, step.minutes)
  return starts
}

/** The pieces cut to the starts, each cut carrying its start's length. Pieces are sorted and apart. */
export function restrict(pieces: Pieces, starts: Starts): Pieces {
  const out = noPieces()
  if (pieces.from.length === 0) return out
  let first = firstAtLeast(starts.to, pieces.from[0]!)
  for (let p = 0; p < pieces.from.length; p++) {
    while (first < starts.to.length && starts.to[first]! < pieces.from[p]!) first++
    for (let s = first; s < starts.to.length && starts.from[s]! <= pieces.to[p]!; s++)
      addPart(out, pieces, p, { from: starts.from[s]!, to: starts.to[s]!, length: starts.length[s]! })
  }
  return out
}

/** How many people the step takes; a step without a skill takes nobody. */
export function teamSize(step: Step): number {
  return step.kind === 'work' && step.skill !== null ? step.crew : 0
}

/** The free spans of each person with the step's skill; for a step that takes nobody, the opening hours alone. */
function freeOf(prepared: Prepared, step: Work, lo: number, hi: number): (readonly Span[])[] {
  if (teamSize(step) === 0) {
    const { from, to } = prepared.hours
    return [from.map((start, j) => ({ from: start, to: to[j]! }))]
  }
  const able = prepared.problem.crew.filter(person => person.skills.includes(step.skill!))
  return able.map(person => prepared.crewFree.get(person.id)!.filter(span => span.to > lo && span.from < hi))
}

/**
 * Starts (inclusive ranges, sorted) at which at least `team` of the people are free for `minutes` unbroken; each is
 * free to the end, so the same people can be kept.
 */
function startRanges(people: readonly (readonly Span[])[], minutes: number, team: number): Span[] {
  const begins: number[] = []
  const ends: number[] = []
  for (const free of people)
    for (const span of free)
      if (span.to - span.from >= minutes) {
        begins.push(span.from)
        ends.push(span.to - minutes)
      }
  const need = Math.max(1, team)
  if (people.length < need) return []
  if (people.length === 1) return begins.map((from, i) => ({ from, to: ends[i]! }))
  const up = Float64Array.from(begins).sort()
  const down = Float64Array.from(ends).sort()
  const ranges: Span[] = []
  let count = 0
  let from = 0
  let j = 0
  for (let i = 0; i < up.length; ) {
    // An end counts until after its own minute, so a begin at the same minute comes first.
    if (up[i]! <= down[j]!) {
      count++
      if (count === need) {
        const last = ranges.at(-1)
        if (last && last.to >= up[i]! - 1) {
          from = last.from
          ranges.pop()
        } else from = up[i]!
      }
      i++
    } else {
      if (count === need) ranges.push({ from, to: down[j]! })
      count--
      j++
    }
  }
  for (; j < down.length; j++) {
    if (count === need) ranges.push({ from, to: down[j]! })
    count--
  }
  return ranges
}

/** Splittable work: counted on the collapsed axis, then cut wherever the start or the end passes a closing. */
function* splitStarts(
  prepared: Prepared,
  step: Work,
  lo: number,
  hi: number,
): Generator<Span & { readonly length: number }> {
  const { hours } = prepared
  const people = freeOf(prepared, step, lo, Number.POSITIVE_INFINITY).map(free => collapse(prepared, free))
  for (const range of startRanges(people, step.minutes, teamSize(step))) {
    // The openings in which the work begins and ends, walked along with its start.
    let begins = Math.max(0, firstAtLeast(hours.before, range.from + 1) - 1)
    let ends = Math.max(0, firstAtLeast(hours.before, range.from + step.minutes) - 1)
    let start = range.from
    while (start <= range.to && begins < hours.from.length) {
      const lastStart = hours.before[begins]! + hours.to[begins]! - hours.from[begins]! - 1
      const lastWithEnd = hours.before[ends]! + hours.to[ends]! - hours.from[ends]! - step.minutes
      const until = Math.min(range.to, lastStart, lastWithEnd)
      if (until >= start) {
        const shift = hours.from[begins]! - hours.before[begins]!
        if (shift + start > hi) return
        const length = step.minutes + hours.from[ends]! - hours.before[ends]! - shift
        yield { from: shift + start, to: shift + until, length }
        start = until + 1
      }
      if (start > lastStart) begins++
      if (start > lastWithEnd) ends++
    }
  }
}

/** Free spans on the collapsed axis, joined across closings. */
function collapse(prepared: Prepared, free: readonly Span[]): Span[] {
  const joined: Span[] = []
  for (const span of free) {
    const from = openBefore(prepared.hours, span.from)
    const to = from + span.to - span.from
    const last = joined.at(-1)
    if (last && last.to === from) joined[joined.length - 1] = { from: last.from, to }
    else joined.push({ from, to })
  }
  return joined
}
