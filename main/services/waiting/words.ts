/** What somebody on the list is told, drafted from the facts. */
import { datedWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Floor } from '../floor/floor.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import type { Entry } from './entries.ts'

/** That there is a place, and until when to answer. */
export function placeWords(
  floor: Floor,
  entry: Pick<Entry, 'customer' | 'vehicle'>,
  place: { dropOffAt: number; handoverAt: number },
): string {
  const when = (at: number) => datedWords(at, floor.zone, floor.nowAt)
  return [
    say('Dear {name},', { name: entry.customer.name }),
    '',
    say(
      'a place has come free for your {car}: bring it {dropOffAt}, and it goes home {handoverAt}. Whoever answers first has it; please tell us whether it suits you.',
      { car: nameOfCar(entry.vehicle), dropOffAt: when(place.dropOffAt), handoverAt: when(place.handoverAt) },
    ),
    '',
    floor.shop.name,
  ].join('\n')
}

/** That another was first. */
export function goneWords({ customer, vehicle }: Pick<Entry, 'customer' | 'vehicle'>): string {
  return [
    say('Dear {name},', { name: customer.name }),
    '',
    say(
      'the place we offered you for your {car} has gone to somebody who answered first. You stay on our list and will hear from us when the next one is free.',
      { car: nameOfCar(vehicle) },
    ),
  ].join('\n')
}
