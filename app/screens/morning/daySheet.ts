import type { MorningView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'

/** What a row of the day's picture shows of one car or one step. */
export interface Bar {
  key: string
  jobId: string
  plate: string
  /** What is done, by whom or where. */
  words: string
  fromAt: number
  toAt: number
  parts: Part[]
}

/** A stretch of a bar: hands-on work, a cure with its curve's product, or a wait long enough to matter. */
export interface Part {
  kind: 'work' | 'cure' | 'wait'
  fromAt: number
  toAt: number
  productId: string | null
  coatEndAt: number | null
}

export interface Row {
  id: string
  name: string
  about: string
  bars: Bar[]
}

/** A wait shorter than this is nobody's business in the morning: minutes. */
const shownWaitMin = 30

type Car = MorningView['bays'][number]['cars'][number]

function partsOf({ blocks }: Car): Part[] {
  return blocks.flatMap(({ kind, fromAt, toAt, cure, productId }) => {
    if (kind === 'wait' && toAt - fromAt < shownWaitMin) return []
    const curing = kind !== 'work' && cure !== null
    return [
      {
        kind: kind === 'work' ? ('work' as const) : curing ? ('cure' as const) : ('wait' as const),
        fromAt,
        toAt,
        productId,
        coatEndAt: curing ? cure.coatEndAt : null,
      },
    ]
  })
}

/** The longest piece of work of a stay and who does it; without any the car cures, or waits. */
function wordsOf({ blocks, leaves }: Car): string {
  const work = blocks.filter(block => block.kind === 'work')
  const main = work.toSorted((a, b) => b.toAt - b.fromAt - (a.toAt - a.fromAt))[0]
  if (main) return [main.name, ...new Set(work.flatMap(block => block.crew))].join(' · ')
  const cures = blocks.some(block => block.cure !== null)
  return [cures ? say('cures') : say('waits'), leaves && say('goes home')].filter(Boolean).join(' · ')
}

/** The day by bay: each stay of a car is one bar. */
export function bayRows(sheet: MorningView): Row[] {
  return sheet.bays.map(bay => ({
    id: bay.id,
    name: bay.name,
    about: bay.closures
      .map(closure => (closure.reason ? say('closed: {reason}', { reason: closure.reason }) : say('closed')))
      .join(', '),
    bars: bay.cars.map(car => ({
      key: `${car.jobId}-${car.fromAt}`,
      jobId: car.jobId,
      plate: car.plate,
      words: wordsOf(car),
      fromAt: car.fromAt,
      toAt: car.toAt,
      parts: partsOf(car),
    })),
  }))
}

/** The day by person: each step of theirs is one bar. */
export function crewRows(sheet: MorningView): Row[] {
  return sheet.crew.map(person => ({
    id: person.id,
    name: person.name,
    about: person.present.length === 0 ? say('away today') : '',
    bars: person.steps.map(step => ({
      key: `${step.jobId}-${step.position}`,
      jobId: step.jobId,
      plate: step.plate,
      words: [
        ...(step.missing ? [say('⚑ not there')] : []),
        step.helps ? say('helps: {name}', { name: step.name }) : step.name,
        step.bayName,
        ...step.with.map(name => say('with {name}', { name })),
      ].join(' · '),
      fromAt: step.fromAt,
      toAt: step.toAt,
      parts: [{ kind: 'work', fromAt: step.fromAt, toAt: step.toAt, productId: null, coatEndAt: null }],
    })),
  }))
}

/** The stretch of the day that is drawn: the opening hours, or the usual ones of a day that is closed. */
export function drawnSpan({ open, fromAt }: Pick<MorningView, 'open' | 'fromAt'>): {
  from: number
  to: number
} {
  return open.length > 0
    ? { from: open[0]!.from, to: open.at(-1)!.to }
    : { from: fromAt + 8 * 60, to: fromAt + 18 * 60 }
}
