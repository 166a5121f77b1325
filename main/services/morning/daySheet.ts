import { type DaySheetPart, daySheetPdf } from '../../documents/daySheet.ts'
import { minuteWords, momentWords, startOfDay } from '../../domain/calendar/index.ts'
import { isAmiss, standingWords } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { dateWords } from '../shelf/orders/letter.ts'
import { type MorningView, morningSheet } from './morning.ts'

/** The morning sheet as a document, for the wall and for whoever has no screen. */
export async function daySheet(desk: Desk, input: { date: string }) {
  const day = await morningSheet(desk, input)
  const dayAt = startOfDay(day.date, day.zone)
  const when = (at: number) => minuteWords(at, day.zone, dayAt)
  const open = day.open
    .map(({ from, to }) => say('{from} to {to}', { from: when(from), to: when(to) }))
    .join(', ')
  const bytes = await daySheetPdf({
    at: day.nowAt,
    ...(await letterheadOf(desk.store.read)),
    dayWords: dateWords(day.date),
    facts: [
      [say('Open||the hours'), open === '' ? say('closed') : open],
      [say('Printed'), momentWords(day.nowAt, day.zone)],
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
      title: say('Coming in'),
      columns: [
        narrow(say('At')),
        rest(say('Car')),
        rest(say('Owner')),
        narrow(say('Bay')),
        rest(say('For')),
      ],
      rows: day.arrivals.map(car => [
        car.arrivedAt === null
          ? when(car.dueAt)
          : say('came {arrivedAt}', { arrivedAt: when(car.arrivedAt) }),
        carWords(car),
        { words: car.customerName, under: car.phone ?? '' },
        car.bayName,
        car.treatments.join('; '),
      ]),
      none: say('Nobody is due.'),
    },
    ...day.crew
      .filter(person => person.steps.length > 0)
      .map(person => ({
        title: person.name,
        columns: [
          narrow(say('From')),
          narrow(say('To')),
          rest(say('Step')),
          rest(say('Car')),
          narrow(say('Bay')),
          rest(say('With')),
        ],
        rows: person.steps.map(step => [
          when(step.fromAt),
          when(step.toAt),
          {
            words: step.helps ? say('helps: {name}', { name: step.name }) : step.name,
            under: step.missing ? say('⚑ not there') : (step.productName ?? ''),
          },
          carWords(step),
          step.bayName,
          step.with.join(', '),
        ]),
        none: '',
      })),
    {
      title: say('Cures'),
      columns: [narrow(say('At')), rest(say('Car')), narrow(say('Bay')), rest(say('What'))],
      rows: day.moments.map(each => [
        when(each.at),
        carWords(each),
        each.bayName,
        { words: each.what, under: each.productName },
      ]),
      none: say('No cure reaches a milestone today.'),
    },
    {
      title: say('Cars that move'),
      columns: [narrow(say('At')), rest(say('Car')), narrow(say('From')), narrow(say('To'))],
      rows: day.moves.map(move => [when(move.at), carWords(move), move.fromBayName, move.toBayName]),
      none: say('No car moves.'),
    },
    {
      title: say('Going home'),
      columns: [narrow(say('At')), rest(say('Car')), rest(say('Owner')), rest(say('What holds it up'))],
      rows: day.handovers.map(car => [
        car.leftAt === null ? when(car.handoverAt) : say('left {leftAt}', { leftAt: when(car.leftAt) }),
        carWords(car),
        { words: car.customerName, under: car.phone ?? '' },
        {
          words: car.words,
          under: car.leftAt === null && isAmiss(car) ? standingWords(car, when) : '',
        },
      ]),
      none: say('No car goes home.'),
    },
  ]
}
