import { checkDate, dateOf, gridUp, intersection, startOfDay } from '../../domain/calendar/index.ts'
import {
  type BlockStep,
  filledStays,
  leavingTimes,
  peopleOf,
  problemOf,
  profilesIn,
  wordsFor,
} from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  explain,
  type Plan,
  type Problem,
  promiseWithin,
  reasonText,
  type Windows,
} from '../../domain/schedule/index.ts'
import type { PanelNoted, Skill } from '../../domain/shop/index.ts'
import type { LaidStep } from '../../domain/treatment/index.ts'
import { sentence } from '../../domain/words.ts'
import { fromJson } from '../../store/json.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { lentNotes, lentWindows } from '../floor/lent.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { salePrice } from '../prices/salePrice.ts'
import { type Sold, sell } from '../setUp/soldTreatments.ts'
import type { OffersInput } from './inputs.ts'
import { offersInStock, type Stocked, type StockedOffer } from './offersInStock.ts'
import { farthestAskedMin, horizonMin, reachStepMin } from './reach.ts'

export type OffersView = Awaited<ReturnType<typeof offers>>

/** A place for the wished job, from drop-off to handover. */
export type PlaceView = Extract<ReturnType<typeof placeView>, { feasible: true }>

type NoOfferView = Exclude<ReturnType<typeof placeView>, PlaceView>

export interface OfferView extends PlaceView {
  /** Where the offer waits for goods: the place as bays and crew allow it, and what must be here by when. */
  ifHere: { words: string; offer: PlaceView } | null
}

/** The three offers for what is wished, each exact against everything booked, with what binds it in words. */
export async function offers(desk: Desk, input: OffersInput) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { vehicleId = '', scope = 'whole' } = input
  const noted = await tx.vehicle.findUnique({ where: { id: vehicleId }, select: { panels: true } })
  const panels = fromJson<PanelNoted[] | null>(noted?.panels ?? null) ?? []
  const sold = await sell(tx, { ...input, finish: input.finish ?? 'gloss', over: { panels, scope, nowAt } })
  const farthest = Math.max(...wishedDays.map(field => minutesTo(nowAt, field, input[field])))
  const aheadMin = Math.min(farthestAskedMin, Math.ceil(farthest / reachStepMin) * reachStepMin)
  const floor = await loadFloor(tx, nowAt, nowAt + horizonMin + aheadMin)
  const today = dateOf(nowAt, floor.zone)
  for (const field of wishedDays) {
    const day = input[field]
    if (day !== undefined && day < today)
      refuse('date-past', { [field]: day }, say('{day} is over; ask for today or later.', { day }))
  }
  const { notBefore, homeBy } = input
  const askedDate = input.askedDate ?? today
  const anyTime = offerProblem(floor, sold.steps, {
    askedAt: startOfDay(askedDate, floor.zone),
    notBeforeAt: startOfDay(notBefore ?? today, floor.zone),
  })
  const lends = input.lends ?? []
  const windows = await lentWindows(tx, floor, lends)
  const { problem, found, tooLate } = homeInTime(
    anyTime,
    homeBy === undefined ? undefined : dayAfter(homeBy, floor.zone),
    windows,
  )
  const stocked = await offersInStock(
    desk,
    tx,
    { floor, sold, asked: problem, windows, sizeClass: input.sizeClass },
    found,
  )
  const view = (found: StockedOffer) => offerView(floor, sold, found)
  const three = {
    soonest: view(stocked.soonest),
    leastBlocked: view(stocked.leastBlocked),
    askedDay: view(stocked.askedDay),
  }
  const rules = await moneyRules(tx)
  const price = salePrice(rules, sold, input, floor.shop.currency)
  return {
    nowAt,
    zone: floor.zone,
    gridMin: floor.gridMin,
    steps: sold.steps.map((step, position) => ({
      position,
      kind: step.kind,
      name: step.name,
      stage: step.stage,
      minutes: step.minutes,
      skill: step.kind === 'work' ? (step.skill as Skill | null) : null,
      crew: step.kind === 'work' ? step.crew : 0,
      productId: step.productId,
      productName: step.productId === null ? null : (sold.products.get(step.productId)?.name ?? null),
    })),
    handsOnMin: sold.handsOnMin,
    treatments: sold.treatments.map((each, i) => ({
      ...each,
      priceMinor: price.treatments[i]!.priceMinor,
    })),
    /** What comes on top or off, in the order it is reckoned. */
    charges: price.charges,
    priceMinor: price.totalMinor,
    /** Treatments without a price for this size: the sum is not the whole of it. */
    unpriced: price.unpriced,
    depositMinor: price.depositMinor,
    taxInPrices: rules.taxInPrices,
    currency: floor.shop.currency,
    /** What the chain of steps wants said: matte paint, a window that leaves little room. */
    notes: [...sold.notes, ...lentNotes(lends, windows)],
    /** Who has confirmed covered transport and storage; null: every offer keeps the car until it may get wet. */
    coveredBy: sold.coveredBy,
    /** The opening hours that the three offers span, for their small boards. */
    open: openAround(floor, Object.values(three)),
    profiles: profilesIn(sold.products),
    askedDate,
    /** No place brings the car home by the day wished for; the offers are those without that wish. */
    tooLate,
    ...three,
  }
}

const wishedDays = ['askedDate', 'notBefore', 'homeBy'] as const

/** Minutes from now to a wished day, with which the horizon moves; refused where it is no date or too far off. */
function minutesTo(nowAt: number, field: (typeof wishedDays)[number], day: string | undefined): number {
  if (day === undefined) return 0
  checkDate(day, field)
  const ahead = startOfDay(day, 'UTC') - nowAt
  if (ahead > farthestAskedMin)
    refuse('date-far', { [field]: day }, say('{day} is too far off; ask within two years.', { day }))
  return Math.max(0, ahead)
}

function dayAfter(day: string, zone: string): number {
  return startOfDay(Temporal.PlainDate.from(day).add({ days: 1 }).toString(), zone)
}

/** The problem of a new car: nothing starts before the next grid point, or before the day it may come. */
function offerProblem(
  floor: Floor,
  steps: readonly LaidStep[],
  { askedAt, notBeforeAt }: { askedAt: number; notBeforeAt: number },
): Problem {
  const release = gridUp(floor, Math.max(floor.nowAt, notBeforeAt))
  return problemOf(floor, {
    job: { id: 'new', release, asked: Math.max(release, gridUp(floor, askedAt)), steps },
  })
}

/** The offers that bring the car home before `homeBefore`; where there is none, those without that wish. */
function homeInTime(anyTime: Problem, homeBefore: number | undefined, windows: Windows) {
  const without = () => ({ problem: anyTime, found: promiseWithin(anyTime, windows) })
  if (homeBefore === undefined) return { ...without(), tooLate: false }
  const problem = { ...anyTime, horizon: Math.min(anyTime.horizon, homeBefore) }
  const found = problem.newJob.release < problem.horizon ? promiseWithin(problem, windows) : null
  return found?.soonest.offer.feasible ? { problem, found, tooLate: false } : { ...without(), tooLate: true }
}

/** An offer as it is shown; where it waits for goods, with the place that holds if they come in time. */
export function offerView(
  floor: Floor,
  sold: Pick<Sold, 'steps' | 'products' | 'leaving'>,
  found: StockedOffer,
): OfferView | NoOfferView {
  const offer = placeView(floor, sold, found)
  if (!offer.feasible) return offer
  const { ifHere } = found
  const sooner = ifHere && placeView(floor, sold, ifHere)
  return { ...offer, ifHere: sooner?.feasible ? { words: ifHere?.words ?? '', offer: sooner } : null }
}

/** What a place is drawn and booked from. */
export function placeView(
  floor: Floor,
  sold: Pick<Sold, 'steps' | 'products' | 'leaving'>,
  { asked, offer, shelf }: Stocked<StockedOffer['offer']>,
) {
  const words = wordsFor(
    floor,
    sold.steps.map(step => step.name),
  )
  const reasons = [...new Set(explain(asked, offer).map(reason => sentence(reasonText(reason, words))))]
  if (!offer.feasible) return { feasible: false as const, reasons }
  const steps = plannedSteps(floor, sold.steps, offer.plan)
  return {
    feasible: true as const,
    /** As `booking.hold` takes it. */
    plan: offer.plan,
    stays: filledStays(
      { steps, leavesAt: offer.handover, leaving: sold.leaving },
      sold.products,
      floor.nowAt,
    ).map(stay => ({
      bayId: stay.bay,
      bayName: floor.bayNames.get(stay.bay) ?? '',
      fromAt: stay.from,
      toAt: stay.to,
      blocks: stay.blocks,
    })),
    dropOffAt: offer.dropOff,
    handoverAt: offer.handover,
    ...leavingTimes(steps, sold.products, sold.leaving),
    /** Opening minutes the car keeps a bay while nobody works on it. */
    blockedOpenMin: offer.blockedOpen,
    /** Minutes of cure outside opening hours: they cost no bay time. */
    closedCureMin: offer.closedCure,
    moves: offer.moves,
    /** What binds this offer. */
    reasons,
    /** Whether the chemicals would be there. */
    shelf,
  }
}

/** A plan's steps as the board draws them. */
function plannedSteps(floor: Floor, steps: readonly LaidStep[], plan: Plan): BlockStep[] {
  return plan.steps.map((placed, position) => {
    const { kind, name, stage, productId } = steps[position]!
    return {
      position,
      kind,
      name,
      stage,
      productId,
      bayId: placed.bay,
      startAt: placed.start,
      endAt: placed.end,
      actualStartAt: null,
      actualEndAt: null,
      movedToBayId: placed.moved?.bay ?? null,
      movedAt: placed.moved?.at ?? null,
      crew: peopleOf(placed).crewIds.map(id => floor.crewNames.get(id) ?? ''),
    }
  })
}

/** The openings from the day of the first drop-off to the day of the last handover. */
function openAround(floor: Floor, three: readonly (OfferView | NoOfferView)[]) {
  const found = three.flatMap(offer =>
    offer.feasible ? [offer, ...(offer.ifHere ? [offer.ifHere.offer] : [])] : [],
  )
  if (found.length === 0) return []
  const from = startOfDay(dateOf(Math.min(...found.map(offer => offer.dropOffAt)), floor.zone), floor.zone)
  const to = Math.max(...found.map(offer => offer.handoverAt)) + 1440
  return intersection(floor.open, [{ from, to }])
}
