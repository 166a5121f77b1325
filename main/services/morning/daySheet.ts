import { type DaySheetPart, daySheetPdf } from '../../documents/daySheet.ts'
import { minuteWords, momentWords, startOfDay } from '../../domain/calendar/index.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { dateWords } from '../shelf/orders/letter.ts'
import { type MorningView, morningSheet } from './morning.ts'

/** The morning sheet as a document, for the wall and for whoever has no screen. */
export async function daySheet(desk: Desk, input: { date: string }) {
  const day = await morningSheet(desk, input)
  const dayAt = startOfDay(day.date, day.zone)
  const when = (at: number) => minuteWords(at, day.zone, dayAt)
  const open = day.open.map(({ from, to }) => `${when(from)} to ${when(to)}`).join(', ')
  const bytes = await daySheetPdf({
    at: day.nowAt,
    ...(await letterheadOf(desk.store.read)),
    dayWords: dateWords(day.date),
    facts: [
      ['Open', open === '' ? 'closed' : open],
      ['Printed', momentWords(day.nowAt, day.zone)],
    ],
    parts: partsOf(day, when),
    cautions: day.cautions.map(({ words }) => words),
  })
  return { name: `day-${day.date}.pdf`, type: 'application/pdf', bytes }
}

const narrow = (title: string) => ({ title, width: 'fit' as const })
const rest = (title: string) => ({ title })
const carWords = ({ plate, vehicleWords }: { plate: string; vehicleWords: string }) => ({
  words: plate === '' ? vehicleWords : plate,
  under: plate === '' ? '' : vehicleWords,
})

function partsOf(day: MorningView, when: (at: number) => string): DaySheetPart[] {
  return [
    {
      title: 'Coming in',
      columns: [narrow('At'), rest('Car'), rest('Owner'), narrow('Bay'), rest('For')],
      rows: day.arrivals.map(car => [
        car.arrivedAt === null ? when(car.dueAt) : `came ${when(car.arrivedAt)}`,
        carWords(car),
        { words: car.customerName, under: car.phone ?? '' },
        car.bayName,
        car.treatments.join('; '),
      ]),
      none: 'Nobody is due.',
    },
    ...day.crew
      .filter(person => person.steps.length > 0)
      .map(person => ({
        title: person.name,
        columns: [narrow('From'), narrow('To'), rest('Step'), rest('Car'), narrow('Bay'), rest('With')],
        rows: person.steps.map(step => [
          when(step.fromAt),
          when(step.toAt),
          { words: step.helps ? `helps: ${step.name}` : step.name, under: step.productName ?? '' },
          carWords(step),
          step.bayName,
          step.with.join(', '),
        ]),
        none: '',
      })),
    {
      title: 'Cures',
      columns: [narrow('At'), rest('Car'), narrow('Bay'), rest('What')],
      rows: day.moments.map(each => [
        when(each.at),
        carWords(each),
        each.bayName,
        { words: each.what, under: each.productName },
      ]),
      none: 'No cure comes to anything today.',
    },
    {
      title: 'Moving',
      columns: [narrow('At'), rest('Car'), narrow('From'), narrow('To')],
      rows: day.moves.map(move => [when(move.at), carWords(move), move.fromBayName, move.toBayName]),
      none: 'No car moves.',
    },
    {
      title: 'Going home',
      columns: [narrow('At'), rest('Car'), rest('Owner'), rest('What binds')],
      rows: day.handovers.map(car => [
        car.leftAt === null ? when(car.handoverAt) : `left ${when(car.leftAt)}`,
        carWords(car),
        { words: car.customerName, under: car.phone ?? '' },
        { words: car.words, under: car.late ? `running late: promised ${when(car.promisedAt)}` : '' },
      ]),
      none: 'Nobody goes home.',
    },
  ]
}
