import type { Span } from '../../../main/domain/calendar/spans.ts'
import type { FloorProblem } from '../../../main/domain/schedule/plan/types.ts'
import type { Step } from '../../../main/domain/schedule/types.ts'

/** A floor as the data of floor.mzn: what hours, skills and absences allow is counted minute by minute here. */
export function floorData(floor: FloorProblem): Record<string, unknown> {
  const { grid, horizon, bays, crew, jobs } = floor
  const points = Array.from({ length: Math.floor(horizon / grid) + 1 }, (_, k) => k)
  const within = (spans: readonly Span[], t: number) => spans.some(({ from, to }) => from <= t && t < to)
  const isOpen = Array.from({ length: horizon + 1 }, (_, t) => within(floor.open, t))
  const openBefore = [0]
  for (const open of isOpen) openBefore.push(openBefore.at(-1)! + Number(open))
  const steps = jobs.flatMap((job, j) => job.steps.map(step => ({ ...step, j, release: job.release })))
  /** The minutes a step uses from a start on; undefined where it cannot start there. */
  const used = (step: Step, from: number): number[] | undefined => {
    const minutes: number[] = []
    for (let t = from; minutes.length < step.minutes; t++) {
      if (t >= horizon) return undefined
      if (step.kind === 'hold' || isOpen[t]) minutes.push(t)
      else if (!step.split || minutes.length === 0) return undefined
    }
    return minutes
  }
  const table = steps.map(step =>
    points.map(k => (k * grid < step.release ? undefined : used(step, k * grid))),
  )
  const pointsWhere = (test: (k: number) => boolean) => ({ set: points.filter(test) })
  const places = bays.map((bay, b) => ({ bay, number: b + 1 }))
  const taken = places.flatMap(({ bay, number }) =>
    [...bay.closed, ...floor.fixed.filter(stay => stay.bay === bay.id)].map(({ from, to }) => ({
      number,
      from,
      to,
    })),
  )
  const endOf = (minutes: number[] | undefined) => (minutes ? minutes.at(-1)! + 1 : 0)
  const nextOf = (s: number) => (steps[s + 1]?.j === steps[s]!.j ? steps[s + 1] : undefined)
  const pointFrom = (minute: number) => Math.min(Math.ceil(minute / grid), points.length - 1)
  const pointTo = (minute: number) => Math.min(Math.floor(minute / grid), points.length - 1)
  const lastOf = jobs.map((_, j) => steps.findLastIndex(step => step.j === j) + 1)
  return {
    grid,
    points: points.length - 1,
    bays: bays.length,
    people: crew.length,
    jobs: jobs.length,
    steps: steps.length,
    first: jobs.map((_, j) => steps.findIndex(step => step.j === j) + 1),
    last: lastOf,
    job: steps.map(step => step.j + 1),
    due: jobs.map(job => job.due),
    weight: jobs.map(job => job.weight),
    handsOn: steps.reduce((sum, step) => sum + (step.kind === 'work' ? step.minutes : 0), 0),
    openBefore: points.map(k => openBefore[k * grid]!),
    doors: pointsWhere(k => floor.open.some(({ from, to }) => from <= k * grid && k * grid <= to)),
    starts: table.map(row => pointsWhere(k => row[k] !== undefined)),
    fits: steps.map(step => ({
      set: places
        .filter(({ bay }) => step.needs == null || bay.can.includes(step.needs))
        .map(({ number }) => number),
    })),
    ready: table.map(row => row.map(minutes => pointFrom(endOf(minutes)))),
    soonest: table.map((row, s) => row.map(minutes => pointFrom(endOf(minutes) + (nextOf(s)?.waitMin ?? 0)))),
    latest: table.map((row, s) => row.map(minutes => pointTo(endOf(minutes) + (nextOf(s)?.waitMax ?? 0)))),
    sameBay: steps.map(step => step.sameBay === true),
    waits: steps.map((_, s) => nextOf(s)?.waitMax != null),
    team: steps.map(step => (step.kind === 'hold' || step.skill === null ? 0 : step.crew)),
    able: steps.map((step, s) =>
      crew.map(({ skills, away }) => {
        const skilled = step.kind === 'work' && step.skill !== null && skills.includes(step.skill)
        return pointsWhere(k => {
          const minutes = table[s]![k]
          return skilled && minutes !== undefined && !minutes.some(minute => within(away, minute))
        })
      }),
    ),
    taken: taken.length,
    takenBay: taken.map(one => one.number),
    takenFrom: taken.map(one => one.from),
    takenTo: taken.map(one => one.to),
  }
}
