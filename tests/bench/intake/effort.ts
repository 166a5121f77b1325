/** Whether the promise-safe quantile of hands-on time covers its share, on simulated histories of shops. */
import { effortFactor, type FinishedVisit, learnEffort } from '../../../main/domain/effort/index.ts'
import { seeded } from '../bookedShop.ts'
import type { Figure } from '../run.ts'
import { normalDraw } from '../simulation/random.ts'

const shops = 400
const visitsEach = 60
const quantiles = [0.5, 0.8, 0.9]
/** Visits known by then: none to few, some, many. */
const stages = [
  { words: 'the first 10 visits', from: 0, to: 10 },
  { words: 'visits 11 to 30', from: 10, to: 30 },
  { words: 'visits 31 to 60', from: 30, to: visitsEach },
]

/** A shop's visits as they come: its own pace, its people, what worn paint and large cars cost it, and chance. */
function history(seed: number): FinishedVisit[] {
  const random = seeded(seed)
  const normal = () => normalDraw(random)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const people = ['Ada', 'Bo', 'Cy', 'Di'].slice(0, 1 + Math.floor(random() * 4))
  const paceOf = new Map(people.map(name => [name, 0.18 * normal()]))
  const sizeOf = new Map(['small', 'medium', 'large', 'xl'].map(name => [name, 0.1 * normal()]))
  const [base, worn, heavy, marked, corrected] = [
    0.3 * normal(),
    0.12 * normal(),
    0.15 * normal(),
    0.15 * normal(),
    0.2 * normal(),
  ]
  const sd = 0.12 + 0.2 * random()
  return Array.from({ length: visitsEach }, () => {
    const visit = {
      sizeClass: pick([...sizeOf.keys()]),
      condition: pick(['good', 'good', 'worn', 'heavy']),
      share: pick([1, 1, 1, 0.35]),
      severity: random() * 2,
      correction: random(),
      who: pick(people),
    }
    const plannedMin = 60 + Math.round(random() * 900)
    const effect =
      base +
      paceOf.get(visit.who)! +
      sizeOf.get(visit.sizeClass)! +
      (visit.condition === 'worn' ? worn : visit.condition === 'heavy' ? heavy : 0) +
      marked * visit.severity +
      corrected * (visit.correction - 0.5)
    return { ...visit, plannedMin, realMin: plannedMin * Math.exp(effect + sd * normal()) }
  })
}

export async function* effortFigures(): AsyncGenerator<Figure> {
  const held = new Map<string, { within: number; asked: number }>()
  for (let shop = 0; shop < shops; shop++) {
    const visits = history(1_000 + shop)
    for (const [i, next] of visits.entries()) {
      // Every third is asked about: enough to see three points, and a bench that ends.
      if ((i + shop) % 3 !== 0) continue
      const effort = learnEffort(visits.slice(0, i))
      const stage = stages.find(({ from, to }) => i >= from && i < to)!
      for (const p of quantiles)
        for (const who of [next.who, null]) {
          const key = `${p * 100} of 100, ${who === null ? 'whoever does it' : 'known who does it'}, ${stage.words}`
          const count = held.get(key) ?? { within: 0, asked: 0 }
          count.asked++
          if (next.realMin <= next.plannedMin * effortFactor(effort, { ...next, who }, p)) count.within++
          held.set(key, count)
        }
    }
  }
  for (const [key, { within, asked }] of held) {
    const value = Math.round((1000 * within) / asked) / 10
    const aim = Number(key.split(' ')[0])
    yield {
      bench: 'intake',
      case: `hands-on time within the quantile for ${key} (${asked} visits)`,
      value,
      unit: '%',
      goal: `${aim} within 3 points`,
      met: Math.abs(value - aim) <= 3,
    }
  }
}
