import { randomFrom } from '../../../main/domain/schedule/plan/random.ts'
import type { FloorJob, FloorProblem } from '../../../main/domain/schedule/plan/types.ts'
import type { Step, Work } from '../../../main/domain/schedule/types.ts'

const day = 1440
const opens = 8 * 60
const closes = 18 * 60

/**
 * An invented shop of twelve bays and eight people with so many cars on the floor, six a day, due when each would be
 * ready alone and a little later: washes, polishing, and coatings that cure. The same seed gives the same week.
 * Durations: common practice, no source.
 */
export function inventedWeek(cars: number, seed: number): FloorProblem {
  const random = randomFrom(seed)
  const any = <T>(items: readonly T[]) => items[Math.floor(random() * items.length)]!
  const days = Math.ceil(cars / 6) + 6
  const at = (d: number, minute: number) => d * day + minute
  const kinds = [
    ['wet'],
    ['wet', 'polish'],
    ['polish'],
    ['polish'],
    ['polish', 'clean', 'cure'],
    ['clean', 'cure'],
  ]
  const skills = [
    ['wash', 'polish'],
    ['wash', 'polish'],
    ['polish', 'coat'],
    ['wash', 'polish', 'coat'],
  ]
  return {
    id: `${cars} cars, seed ${seed}`,
    grid: 15,
    horizon: at(days, 0),
    open: Array.from({ length: days }, (_, d) => ({ from: at(d, opens), to: at(d, closes) })),
    bays: [...kinds, ...kinds].map((can, b) => ({ id: `bay ${b + 1}`, can, closed: [] })),
    crew: [...skills, ...skills].map((own, p) => ({ id: `person ${p + 1}`, skills: own, away: [] })),
    fixed: [],
    jobs: Array.from({ length: cars }, (_, j): FloorJob => {
      const release = at(Math.floor(j / 6), 0)
      const steps = treatment(any)
      const handsOn = steps.reduce((sum, step) => sum + step.minutes, 0)
      const due = release + opens + Math.ceil((handsOn * (1 + random())) / 15) * 15
      return { id: `car ${j + 1}`, release, due, weight: any([1, 1, 2, 3]), steps }
    }),
  }
}

function treatment(any: <T>(items: readonly T[]) => T): Step[] {
  const work = (skill: string, needs: string, minutes: number, split = false): Work => ({
    kind: 'work',
    minutes,
    needs,
    skill,
    crew: 1,
    split,
  })
  const steps: Step[] = [work('wash', 'wet', any([45, 60, 90]))]
  if (any([0, 1, 1])) steps.push(work('polish', 'polish', any([240, 300, 600]), true))
  if (any([0, 1, 1]))
    steps.push(work('coat', 'clean', any([90, 120, 150])), {
      kind: 'hold',
      minutes: any([240, 720, 1080]),
      needs: 'cure',
      sameBay: true,
      waitMin: 0,
      waitMax: 0,
    })
  return steps
}
