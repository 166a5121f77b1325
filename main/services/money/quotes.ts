/** Quotes: worked out, kept as they were, signed, and made a booking. */

import { dateOf, dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import { typedSignature } from '../../domain/intake/index.ts'
import { say, word } from '../../domain/language/index.ts'
import type { Charge } from '../../domain/money/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { type Condition, checkNote, checkText, type Scope } from '../../domain/shop/index.ts'
import { fromJson, toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { holdPlaceIn, markBooked } from '../booking/booking.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { vehicleInUse } from '../records/vehicles.ts'
import type { AcceptInput, BookQuoteInput, DeclineInput, QuoteInput } from './inputs.ts'
import { type Lasts, workOut } from './variant.ts'

export type QuoteView = Awaited<ReturnType<typeof quoteView>>

const gone = word('This quote is not there.')
const closedWords = word(
  'Quote {number} is {status, select, accepted {accepted} declined {declined} other {booked}} already.',
)

/** A quote as it was made, with what has become of it. */
export function getQuote(desk: Desk, { id }: { id: string }) {
  return quoteView(desk.store.read, desk.now(), id)
}

export async function quoteView(tx: Tx, nowAt: number, id: string) {
  const row = await tx.quote.findUnique({
    where: { id },
    include: { vehicle: { include: { customer: true } }, variants: { orderBy: { position: 'asc' } } },
  })
  const { vehicle, variants, ...quote } = found(row, { id }, say(gone))
  const [{ zone, currency }, { taxInPrices }] = await Promise.all([shopOf(tx), moneyRules(tx)])
  const today = dateOf(nowAt, zone)
  return {
    ...quote,
    status: quote.status as 'open' | 'accepted' | 'declined' | 'booked',
    condition: quote.condition as Condition,
    scope: quote.scope as Scope,
    over: quote.status === 'open' && quote.validUntil < today,
    carName: nameOfCar(vehicle),
    sizeClass: vehicle.sizeClass,
    finish: vehicle.finish,
    customer: { id: vehicle.customerId, name: vehicle.customer.name, email: vehicle.customer.email },
    zone,
    nowAt,
    currency,
    taxInPrices,
    variants: variants.map(({ treatments, charges, lasts, dropOffAt, handoverAt, ...variant }) => ({
      ...variant,
      treatments: fromJson<{ id: string; name: string; priceMinor: number }[]>(treatments),
      charges: fromJson<Charge[]>(charges),
      lasts: fromJson<Lasts[]>(lasts),
      dropOffAt,
      handoverAt,
      /** Days of the calendar on which the car is not at home. */
      daysAway: dayNumber(dateOf(handoverAt, zone)) - dayNumber(dateOf(dropOffAt, zone)) + 1,
    })),
  }
}

/** The newest quotes, a hundred at most. */
export async function listQuotes(desk: Desk) {
  const tx = desk.store.read
  const { zone, currency } = await shopOf(tx)
  const today = dateOf(desk.now(), zone)
  const rows = await tx.quote.findMany({
    orderBy: [{ createdAt: 'desc' }, { number: 'desc' }],
    take: 100,
    // Without the signatures, each a picture.
    select: {
      id: true,
      number: true,
      status: true,
      validUntil: true,
      vehicle: { include: { customer: { select: { name: true } } } },
      variants: { select: { priceMinor: true } },
    },
  })
  return rows.map(({ id, number, status, validUntil, vehicle, variants }) => ({
    id,
    number,
    status: status as QuoteView['status'],
    over: status === 'open' && validUntil < today,
    validUntil,
    carName: nameOfCar(vehicle),
    customerName: vehicle.customer.name,
    currency,
    fromMinor: Math.min(...variants.map(each => each.priceMinor)),
  }))
}

/** Makes a quote of one to three ways, each worked out as it stands today. */
export async function makeQuote(desk: Desk, input: QuoteInput): Promise<{ id: string; number: number }> {
  const { vehicleId, condition, scope } = input
  const vehicle = await vehicleInUse(desk.store.read, vehicleId)
  const names = input.variants.map((each, i) =>
    checkText(each.name, `variants.${i}.name`, say('The name'), 60),
  )
  const variants: Awaited<ReturnType<typeof workOut>>[] = []
  for (const [i, each] of input.variants.entries())
    variants.push(
      await workOut(desk, vehicle, { ...each, name: names[i]!, condition, scope }, `variants.${i}`),
    )
  return act(desk, async (tx, audit, at) => {
    const { quoteDays } = await moneyRules(tx)
    const { zone } = await shopOf(tx)
    const number = ((await tx.quote.aggregate({ _max: { number: true } }))._max.number ?? 0) + 1
    const { id } = await tx.quote.create({
      data: {
        number,
        vehicleId,
        status: 'open',
        condition,
        scope,
        validUntil: dateOfDay(dayNumber(dateOf(at, zone)) + quoteDays),
        note: checkNote(input.note, 'note', 1_000),
        createdAt: at,
        variants: {
          create: variants.map(({ treatments, charges, lasts, ...variant }, position) => ({
            ...variant,
            treatments: treatments.map(toJson),
            charges: charges.map(toJson),
            lasts: lasts.map(toJson),
            position,
          })),
        },
      },
    })
    audit({ act: 'quoted', entity: 'vehicle', entityId: vehicleId, detail: { quote: number } })
    return { id, number }
  })
}

/** A quote for one change, on the version seen. */
async function claim(tx: Tx, { id, version }: { id: string; version: number }) {
  const quote = found(await tx.quote.findUnique({ where: { id } }), { id }, say(gone))
  const { count } = await tx.quote.updateMany({
    where: { id, version },
    data: { version: { increment: 1 } },
  })
  assertFresh(count, 'quote', id)
  return quote
}

/** The owner has chosen one and signed for it on the screen, or confirmed it with the typed name. */
export async function acceptQuote(desk: Desk, input: AcceptInput): Promise<{ version: number }> {
  const { id, version, position, signature } = input
  const signedName = checkText(input.name, 'name', say('The name of who signs'), 120)
  if (signature !== typedSignature && !/^data:image\/png;base64,[A-Za-z0-9+/=]{40,}$/.test(signature))
    refuse('signature-missing', { signature: null }, say('Nobody has signed yet; sign in the field.'))
  return act(desk, async (tx, audit, at) => {
    const quote = await claim(tx, { id, version })
    const { zone } = await shopOf(tx)
    if (quote.status !== 'open')
      refuse('not-open', { id }, say(closedWords, { number: quote.number, status: quote.status }))
    if (quote.validUntil < dateOf(at, zone))
      refuse(
        'quote-over',
        { id },
        say('Quote {number} was good until {validUntil}; make a new one.', {
          number: quote.number,
          validUntil: quote.validUntil,
        }),
      )
    if ((await tx.quoteVariant.count({ where: { quoteId: id, position } })) === 0)
      refuse('missing', { position }, say('That is no variant of this quote; choose another.'))
    await tx.quote.update({
      where: { id },
      data: { status: 'accepted', accepted: position, signedName, signedAt: at, signature },
    })
    audit({
      act: 'quote signed',
      entity: 'vehicle',
      entityId: quote.vehicleId,
      detail: { quote: quote.number, name: signedName },
    })
    return { version: version + 1 }
  })
}

/** The owner wants none of it. */
export function declineQuote(desk: Desk, { id, version }: DeclineInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    const quote = await claim(tx, { id, version })
    if (quote.status !== 'open' && quote.status !== 'accepted')
      refuse('not-open', { id }, say(closedWords, { number: quote.number, status: quote.status }))
    await tx.quote.update({ where: { id }, data: { status: 'declined' } })
    audit({
      act: 'quote declined',
      entity: 'vehicle',
      entityId: quote.vehicleId,
      detail: { quote: quote.number },
    })
    return { version: version + 1 }
  })
}

/** Makes what was signed a booking at a place offered now, for the price that was signed. */
export function bookQuote(
  desk: Desk,
  { id, version, plan }: BookQuoteInput,
): Promise<{ jobId: string; jobNumber: number }> {
  return act(desk, async (tx, audit, at) => {
    const row = await claim(tx, { id, version })
    if (row.status !== 'accepted')
      refuse(
        'not-signed',
        { id },
        say('Quote {number} is not signed; the owner signs first.', { number: row.number }),
      )
    const quote = await quoteView(tx, at, id)
    const variant = found(
      quote.variants.find(each => each.position === row.accepted),
      { id },
      gone,
    )
    const held = await holdPlaceIn(tx, audit, at, {
      vehicleId: row.vehicleId,
      condition: quote.condition,
      scope: quote.scope,
      treatmentIds: variant.treatments.map(each => each.id),
      plan,
      quoted: { treatments: variant.treatments, charges: variant.charges, totalMinor: variant.priceMinor },
    })
    const { promisedAt } = await tx.job.findUniqueOrThrow({ where: { id: held.jobId } })
    await markBooked(tx, audit, { ...held, promisedAt })
    await tx.quote.update({ where: { id }, data: { status: 'booked', jobId: held.jobId } })
    return { jobId: held.jobId, jobNumber: held.jobNumber }
  })
}
