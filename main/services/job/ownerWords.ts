/** What the owner of a coated car is told when it leaves: how long to keep it dry, and when to wash it first. */

import { careSheetPdf } from '../../documents/careSheet.ts'
import { momentWords, weekdayDate, zonedOf } from '../../domain/calendar/index.ts'
import { reachedOutside, usualOutside } from '../../domain/cure/index.ts'
import { coatsOf } from '../../domain/floor/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { degreesWords } from '../../domain/measure/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { speakingToOwner } from '../desk/speaking.ts'
import { plateWords, vehicleWords } from '../floor/jobRows.ts'
import { carUpkeep } from '../upkeep/car.ts'
import type { OutsideInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'
import { type JobOnFloor, jobOnFloor } from './jobOnFloor.ts'

type Coat = ReturnType<typeof coatsOf>[number]

export interface OwnerWordsView {
  to: string | null
  subject: string
  text: string
  /** The temperature outside that was entered for this car; null: none was. */
  outsideC: number | null
}

/** The words for the owner; null where nothing that cures is on the car or to come. */
export function ownerWords(desk: Desk, { id }: { id: string }): Promise<OwnerWordsView | null> {
  return speakingToOwner(desk.store.read, id, () => ownerWordsIn(desk, id))
}

async function ownerWordsIn(desk: Desk, id: string): Promise<OwnerWordsView | null> {
  const found = await jobOnFloor(desk.store.read, desk.now(), id)
  const body = careOf(found)
  if (!body) return null
  const { job, floor } = found
  return {
    to: job.customer.email,
    subject: subjectOf(found),
    text: [say('Dear {name},', { name: job.customer.name }), '', ...body, '', floor.shop.name].join('\n'),
    outsideC: job.outsideC,
  }
}

/** Writes down the temperature outside, as the forecast gives it; null: the season's usual counts again. */
export function setOutside(
  desk: Desk,
  { id, version, outsideC }: OutsideInput,
): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, () => {
    if (outsideC !== null && !(outsideC >= -60 && outsideC <= 60))
      refuse(
        'weather-impossible',
        { outsideC },
        say('That is no weather; give the temperature outside, or leave it empty.'),
      )
    return { data: { outsideC }, act: 'weather noted', detail: { outsideC } }
  })
}

/** The same as a sheet to hand over with the key, with what was applied and the visits that follow. */
export function careSheet(desk: Desk, { id }: { id: string }) {
  return speakingToOwner(desk.store.read, id, () => careSheetIn(desk, id))
}

async function careSheetIn(desk: Desk, id: string) {
  const tx = desk.store.read
  const onFloor = await jobOnFloor(tx, desk.now(), id)
  const care = timesOf(onFloor)
  if (!care) refuse('missing', { id }, say('Nothing on this car cures, so there is no care sheet for it.'))
  const { job, floor, products } = onFloor
  const { plans } = await carUpkeep(desk, { vehicleId: job.vehicleId })
  const when = (at: number | null) => (at === null ? say(never) : momentWords(at, floor.zone))
  const coats = coatsOf(job.steps, products)
  const bytes = await careSheetPdf({
    at: floor.nowAt,
    ...(await letterheadOf(tx)),
    subject: subjectOf(onFloor),
    to: [job.customer.name],
    facts: [
      [say('Car'), vehicleWords(job.vehicle)],
      [say('Plate'), plateWords(job.vehicle.plate)],
      [say('Handed over'), job.leftAt === null ? '' : momentWords(job.leftAt, floor.zone)],
    ].filter(([, words]) => words !== '') as [string, string][],
    times: [
      care.dryAt === care.leavesAt
        ? [say('Rain'), say('it may get wet from the time you have it')]
        : [say('Keep it dry until'), when(care.dryAt)],
      [say('No wash before'), when(care.washAt)],
      [say('Fully cured on'), when(care.fullAt)],
    ],
    reckoned: reckonedWords(onFloor, care),
    applied: coats.map(coat => ({ product: coat.product.name, step: job.steps[coat.index]?.name ?? '' })),
    visits: plans.flatMap(({ title, next }) =>
      next === null
        ? []
        : [
            {
              title,
              due: fullDay(next.dueOn),
              window: say('{firstOn} to {lastOn}', {
                firstOn: fullDay(next.firstOn),
                lastOn: fullDay(next.lastOn),
              }),
            },
          ],
    ),
  })
  return { name: `care-${plateWords(job.vehicle.plate)}.pdf`, type: 'application/pdf', bytes }
}

const never = word('too cold to cure; ask us')
const fullDay = (date: string) => weekdayDate(date)

function subjectOf({ job }: JobOnFloor): string {
  const plate = job.vehicle.plate === '' ? '' : ` (${plateWords(job.vehicle.plate)})`
  return say('Care of your {vehicle}{plate}', { vehicle: vehicleWords(job.vehicle), plate })
}

interface CareTimes {
  leavesAt: number
  /** Null: too cold ever to get there. */
  dryAt: number | null
  washAt: number | null
  fullAt: number | null
  weather: { celsius: number; words: string }
}

/** When the slowest coat reaches each milestone, in the weather outside; null where nothing on the car cures. */
function timesOf({ job, floor, products }: JobOnFloor): CareTimes | null {
  const coats = coatsOf(job.steps, products)
  if (coats.length === 0) return null
  const leavesAt = job.leftAt ?? job.leavesAt
  const weather = weatherOf({ job, floor, products }, leavesAt)
  const latest = (ageOf: (coat: Coat) => number) => {
    const each = coats.map(coat =>
      reachedOutside(
        coat.product.cureProfile,
        { leavesAt, leftAgeMin: ageAt(coat, leavesAt), outsideC: weather.celsius },
        ageOf(coat),
      ),
    )
    return each.reduce<number | null>((a, b) => (a === null || b === null ? null : Math.max(a, b)), leavesAt)
  }
  return {
    leavesAt,
    weather,
    dryAt: latest(coat => coat.product.cureProfile.keepDryMin),
    washAt: latest(coat => coat.product.cureProfile.firstWashMin),
    fullAt: latest(coat => coat.product.cureProfile.fullCure.lateMin),
  }
}

function careOf(onFloor: JobOnFloor): string[] | null {
  const care = timesOf(onFloor)
  if (!care) return null
  const when = (at: number) => momentWords(at, onFloor.floor.zone)
  return [
    dryWords(care, when),
    care.washAt === null
      ? say('Ask us before you wash it for the first time: in this cold the coating does not cure.')
      : say('Wash it for the first time not before {washAt}.', { washAt: when(care.washAt) }),
    reckonedWords(onFloor, care),
  ]
}

function dryWords({ dryAt, leavesAt }: CareTimes, when: (at: number) => string): string {
  if (dryAt === leavesAt) return say('Your car may get wet from the time you have it.')
  if (dryAt === null)
    return say(
      'Keep your car dry: no rain, no dew, no washing. In this cold the coating does not cure; ask us before your car leaves its cover.',
    )
  return say(
    'Keep your car dry until {dryAt}: no rain, no dew, no washing. It must travel and stand under cover until then.',
    { dryAt: when(dryAt) },
  )
}

function reckonedWords({ floor }: JobOnFloor, { leavesAt, weather }: CareTimes): string {
  return say(
    'These times count from {leavesAt} at {celsius} outside ({words}). In colder weather they come later. The data sheet of what was applied decides.',
    {
      leavesAt: momentWords(leavesAt, floor.zone),
      celsius: degreesWords(weather.celsius, floor.shop.units),
      words: weather.words,
    },
  )
}

/** How old a coat is when its car leaves: by its clock, or as planned at the profile's temperature. */
function ageAt({ laid, endAt }: Coat, leavesAt: number): number {
  return laid ? laid.clock.ageAt(leavesAt) : Math.max(0, leavesAt - endAt)
}

/** What the weather is taken to be, and who says so: entered for this car, the season's usual, or nobody. */
function weatherOf(
  { job, floor, products }: JobOnFloor,
  leavesAt: number,
): { celsius: number; words: string } {
  if (job.outsideC !== null) return { celsius: job.outsideC, words: say('as noted for this day') }
  const { outsideUsual } = floor.shop
  if (outsideUsual !== null) {
    const { month } = zonedOf(leavesAt, floor.zone)
    return { celsius: usualOutside(outsideUsual, month), words: say('the usual of the season') }
  }
  const references = coatsOf(job.steps, products).map(coat => coat.product.cureProfile.referenceC)
  return {
    celsius: Math.min(...references),
    words: say('the temperature its figures hold at, as no weather was noted'),
  }
}
