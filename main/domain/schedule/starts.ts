import type { Span } from '../calendar/spans.ts'
import { firstEndingFrom, openBefore, openingOfMinute, touching } from './openTime.ts'
import { addPart, type Piece } from './pieces.ts'
import { gridCeil, gridFloor, type Prepared } from './prepare.ts'
import { helpOf, skilledFor, teamSize } from './steps.ts'
import type { Step, Work } from './types.ts'

/**
 * A run of grid points, both ends included, at which a step may start as far as opening hours, crew and its own pins
 * go, whatever the bay. `length` is what to add to a start to get its end; it is constant in a run, and grows from
 * run to run where a split step crosses a closing.
 */
export interface Run extends Span {
  readonly length: number
}

/** The feasible starts of `step` between the minutes `lo` and `hi`, its end at or before `hi`: sorted, apart. */
export function startsOf(prepared: Prepared, step: Step, lo: number, hi: number): Run[] {
  const runs: Run[] = []
  const earliest = Math.max(lo, step.startFrom ?? lo)
  const latest = Math.min(hi, step.startTo ?? hi)
  for (const { from, to, length } of minutesToStart(prepared, step, { lo, earliest, hi })) {
    const first = gridCeil(prepared, Math.max(from, earliest))
    const last = gridFloor(prepared, Math.min(to, latest, hi - length))
    if (first > last) continue
    const before = runs.at(-1)
    if (before?.to === first - 1 && before.length === length) runs[runs.length - 1] = { ...before, to: last }
    else runs.push({ from: first, to: last, length })
  }
  return runs
}

/** The minutes at which hours and crew let the step start, on the grid or not. */
function minutesToStart(
  prepared: Prepared,
  step: Step,
  { lo, earliest, hi }: { readonly lo: number; readonly earliest: number; readonly hi: number },
): Iterable<Run> {
  if (step.kind === 'hold') return [{ from: lo, to: hi, length: step.minutes }]
  if (step.split) return splitStarts(prepared, step, earliest, hi)
  const ranges = mannedStarts(freeOf(prepared, step, lo, hi), step)
  return ranges.map(({ from, to }) => ({ from, to, length: step.minutes }))
}

/** The pieces cut to the runs, each cut carrying its run's length. Pieces are sorted and apart. */
export function restrict(pieces: readonly Piece[], runs: readonly Run[]): Piece[] {
  const out: Piece[] = []
  const [head] = pieces
  if (!head) return out
  let first = firstEndingFrom(runs, head.from)
  for (const piece of pieces) {
    while ((runs[first]?.to ?? Number.POSITIVE_INFINITY) < piece.from) first++
    let i = first
    for (let run = runs[i]; run && run.from <= piece.to; run = runs[++i])
      addPart(out, piece, run.from, run.to, 0, run.length)
  }
  return out
}

/** The free spans of each person with the step's skill; for a step that takes nobody, the opening hours alone. */
function freeOf({ hours, crew }: Prepared, step: Work, lo: number, hi: number): (readonly Span[])[] {
  if (teamSize(step) === 0) return [hours.openings]
  return skilledFor(step, crew).map(({ free }) => free.filter(span => span.to > lo && span.from < hi))
}

/**
 * Starts at which there are people for the whole step, and more of them for its help. Who is free for the whole of it is
 * free for the part too, so counting both is enough: whoever is taken for the whole, the others can help.
 */
function mannedStarts(people: readonly (readonly Span[])[], step: Work): Span[] {
  const whole = startRanges(people, step.minutes, teamSize(step))
  const help = helpOf(step)
  if (!help) return whole
  const part = startRanges(people, help.minutes, teamSize(step) + help.crew)
  return whole.flatMap(range =>
    touching(part, range.from + help.from, range.to + help.from).map(({ from, to }) => ({
      from: Math.max(range.from, from - help.from),
      to: Math.min(range.to, to - help.from),
    })),
  )
}

/**
 * Starts (both ends included, sorted) at which at least `team` of the people are free for `minutes` unbroken; each is
 * free to the end, so the same people can be kept.
 */
function startRanges(people: readonly (readonly Span[])[], minutes: number, team: number): Span[] {
  const begins: number[] = []
  const ends: number[] = []
  for (const free of people)
    for (const { from, to } of free)
      if (to - from >= minutes) {
        begins.push(from)
        ends.push(to - minutes)
      }
  const need = Math.max(1, team)
  const ranges: Span[] = []
  const down = Float64Array.from(ends).sort()
  let count = 0
  let from = 0
  let j = 0
  /** Lets those end who can begin no later than before `at`. */
  const endBefore = (at: number) => {
    for (let to = down[j]; to !== undefined && to < at; to = down[++j])
      if (count-- === need) ranges.push({ from, to })
  }
  for (const begin of Float64Array.from(begins).sort()) {
    // An end counts until after its own minute, and starts on the next go on the same range.
    endBefore(begin)
    if (++count !== need) continue
    const last = ranges.at(-1)
    const goesOn = last !== undefined && last.to >= begin - 1
    from = goesOn ? last.from : begin
    if (goesOn) ranges.pop()
  }
  endBefore(Number.POSITIVE_INFINITY)
  return ranges
}

/** Splittable work: counted on the collapsed axis, then cut wherever the start or the end passes a closing. */
function* splitStarts(prepared: Prepared, step: Work, lo: number, hi: number): Generator<Run> {
  const { hours } = prepared
  const { openings } = hours
  const people = freeOf(prepared, step, lo, Number.POSITIVE_INFINITY).map(free => collapse(prepared, free))
  for (const range of mannedStarts(people, step)) {
    // The openings in which the work begins and ends, walked along with its start.
    let begins = openingOfMinute(hours, range.from + 1)
    let ends = openingOfMinute(hours, range.from + step.minutes)
    let start = range.from
    while (start <= range.to) {
      const begin = openings[begins]
      const end = openings[ends]
      if (!begin || !end) break
      const lastStart = begin.before + begin.to - begin.from - 1
      const lastWithEnd = end.before + end.to - end.from - step.minutes
      const until = Math.min(range.to, lastStart, lastWithEnd)
      if (until >= start) {
        const shift = begin.from - begin.before
        if (shift + start > hi) return
        const length = step.minutes + end.from - end.before - shift
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
    if (last?.to === from) joined[joined.length - 1] = { from: last.from, to }
    else joined.push({ from, to })
  }
  return joined
}
