import fc from 'fast-check'
import type { Span } from '../../../main/domain/calendar/spans.ts'
import type { Problem, Step } from '../../../main/domain/schedule/types.ts'

const capabilities = ['wet', 'polish', 'cure']
const skills = ['wash', 'coat']

interface Wish {
  /** Whether the app's own fields (moves inside holds, pins, allow-lists, a shifted grid) may occur. */
  readonly extensions: boolean
  /** Whether work may want help for a part of it. */
  readonly help?: boolean
}

/**
 * Small cases in which everything can go wrong: several openings off the grid, closures, absences, teams of two,
 * waits with both limits, splits, holds over nights. Small enough for trying every plan there is.
 */
export function smallProblem(wish: Wish): fc.Arbitrary<Problem> {
  return fc.gen().map(g => {
    const int = (min: number, max: number) => g(fc.integer, { min, max })
    const one = <T>(items: readonly T[]) => items[int(0, items.length - 1)]!
    const often = (percent: number) => int(1, 100) <= percent
    const some = <T>(items: readonly T[], percent: number) => items.filter(() => often(percent))

    const grid = one([1, 5, 7, 10, 15, 30, 60])
    const horizon = grid * int(20, 44)
    const spans = (count: number, shortest: number, longest: number): Span[] =>
      Array.from({ length: count }, () => {
        const from = int(0, horizon - 1)
        return { from, to: Math.min(horizon, from + int(shortest, longest)) }
      })
    // Nights between openings, with edges that need not be on the grid.
    const open: Span[] = []
    for (let t = int(0, 4 * grid); t < horizon; ) {
      const to = Math.min(horizon + grid, t + int(2 * grid, 14 * grid))
      open.push({ from: t, to })
      t = to + int(1, 8 * grid)
    }
    const bays = Array.from({ length: int(1, 4) }, (_, b) => ({
      id: `b${b}`,
      can: some(capabilities, 85),
      closed: often(25) ? spans(1, grid, 6 * grid) : [],
    }))
    const crew = Array.from({ length: int(1, 3) }, (_, p) => ({
      id: `p${p}`,
      skills: some(skills, 85),
      away: spans(int(0, 3), 1, 5 * grid),
    }))
    const fixed = Array.from({ length: int(0, 6) }, () => ({
      bay: one(bays).id,
      ...spans(1, grid, 8 * grid)[0]!,
    })).filter(stay => stay.from < stay.to)
    const steps = Array.from({ length: int(1, 4) }, (_, i): Step => {
      const waitMin = often(25) ? int(0, 5 * grid) : undefined
      const waitMax = often(30) ? (waitMin ?? 0) + int(0, 6 * grid) : undefined
      const startFrom = wish.extensions && often(10) ? int(0, horizon >> 1) : undefined
      const common = {
        needs: often(85) ? one(capabilities) : null,
        sameBay: i > 0 && often(25),
        waitMin: often(20) ? null : waitMin,
        waitMax: often(20) ? null : waitMax,
        ...(wish.extensions && {
          bays: often(15) ? some(bays, 60).map(bay => bay.id) : undefined,
          preferBays: often(30) ? [one(bays).id] : undefined,
          startFrom,
          startTo: often(10) ? (startFrom ?? 0) + int(0, 12 * grid) : undefined,
        }),
      }
      if (often(40))
        return {
          ...common,
          kind: 'hold',
          minutes: int(1, 14 * grid),
          ...(wish.extensions && often(60) && { moveAfter: int(0, 5 * grid) }),
        }
      const minutes = int(1, often(70) ? 4 * grid : 9 * grid)
      const from = wish.help ? int(0, minutes - 1) : 0
      return {
        ...common,
        kind: 'work',
        minutes,
        ...(wish.help &&
          often(60) && { help: { crew: often(80) ? 1 : 2, from, minutes: int(1, minutes - from) } }),
        skill: often(80) ? one(skills) : null,
        crew: often(20) ? 2 : 1,
        split: often(50),
      }
    })
    return {
      grid,
      gridFrom: wish.extensions && often(30) ? int(0, grid - 1) : 0,
      horizon,
      open,
      bays,
      crew,
      fixed,
      newJob: {
        id: 'new',
        release: int(0, 6 * grid),
        asked: int(0, horizon >> 1),
        steps,
        ...(wish.extensions && often(20) && { preferBays: [one(bays).id] }),
      },
    }
  })
}
