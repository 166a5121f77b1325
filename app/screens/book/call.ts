import type { Condition, Finish, OffersView, PlaceView, Scope, SizeClass } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { LentKind } from '../../../main/domain/shop/index.ts'

export type Wish = 'any' | 'day' | 'notBefore' | 'homeBy'

/** What is known of the caller and the car so far; nothing of it is saved before a place is held. */
export interface Call {
  customerId: string | null
  customerName: string
  phone: string
  email: string
  vehicleId: string | null
  plate: string
  make: string
  model: string
  colour: string
  sizeClass: SizeClass
  finish: Finish
  treatmentIds: string[]
  condition: Condition
  /** How much of the paint. */
  scope: Scope
  wish: Wish
  /** The day of the wish. */
  wishedOn: string | null
  /** Who has confirmed covered transport and storage; empty: the car stays until it may get wet. */
  coveredBy: string
  /** What the caller borrows meanwhile. */
  lends: LentKind[]
  /** The caller is somebody new, whose fields are open. */
  isNew: boolean
  /** What is sold beside the treatments, by the shop's keys. */
  extraKeys: string[]
  /** Off the whole, in percent, with why. */
  discount: { percent: string; reason: string }
  /** Prices agreed for treatments that have none for this size. */
  agreed: { treatmentId: string; priceMinor: number }[]
  /** The place held for this call. */
  heldJobId: string | null
}

/** Nobody yet: what of one caller would be wrong of the next. */
export const nobody = {
  customerId: null,
  customerName: '',
  phone: '',
  email: '',
  vehicleId: null,
  plate: '',
  make: '',
  model: '',
  colour: '',
  sizeClass: 'medium',
  finish: 'gloss',
  isNew: false,
} satisfies Partial<Call>

export const emptyCall: Call = {
  ...nobody,
  treatmentIds: [],
  condition: 'good',
  scope: 'whole',
  wish: 'any',
  wishedOn: null,
  coveredBy: '',
  extraKeys: [],
  discount: { percent: '', reason: '' },
  agreed: [],
  lends: [],
  heldJobId: null,
}

/**
 * The call with what was supposed of a rush car: whoever was being typed in stays, a place that is held for them too,
 * and so does the size of a car on file.
 */
export function rushCall(
  call: Call,
  rush: { readonly treatmentIds: readonly string[]; readonly sizeClass: SizeClass; readonly homeBy: string },
): Call {
  if (call.heldJobId !== null) return call
  const { treatmentIds, sizeClass, homeBy } = rush
  const size = call.vehicleId === null ? { sizeClass } : {}
  return { ...call, ...size, treatmentIds: [...treatmentIds], wish: 'homeBy', wishedOn: homeBy }
}

/**
 * A call about a car on file, from its page or its upkeep, with the day it is to come; a place that is held for somebody
 * is dealt with first.
 */
export function carCall(call: Call, caller: Partial<Call>, onDay: string | null): Call {
  if (call.heldJobId !== null) return call
  return { ...emptyCall, ...caller, ...(onDay !== null && { wish: 'day', wishedOn: onDay }) }
}

const place = 'lustrum.call'
/** A call kept longer than this is yesterday's: minutes. */
const keptMin = 12 * 60

/** The call as it was left, on another screen, before a reload or a crash; an old or unreadable one is none. */
export function keptCall(store: Pick<Storage, 'getItem'>, nowAt: number): Call {
  try {
    const { call, at } = JSON.parse(store.getItem(place) ?? 'null') as { call: Call; at: number }
    return nowAt - at < keptMin ? { ...emptyCall, ...call } : emptyCall
  } catch {
    return emptyCall
  }
}

export function keepCall(store: Pick<Storage, 'setItem' | 'removeItem'>, call: Call, nowAt: number): void {
  if (call === emptyCall) store.removeItem(place)
  else store.setItem(place, JSON.stringify({ call, at: nowAt }))
}

/** What a text that found nobody most likely is: a number has mostly digits, a plate has one and few letters. */
export function callerFrom(text: string): Partial<Call> {
  const digits = text.replaceAll(/\D/g, '').length
  const letters = text.replaceAll(/\P{L}/gu, '').length
  const base = { ...nobody, isNew: true }
  if (text.includes('@')) return { ...base, email: text }
  if (digits >= 5 && letters === 0) return { ...base, phone: text }
  if (digits > 0 && letters <= 5) return { ...base, plate: text }
  return { ...base, customerName: text }
}

const offerKinds = ['soonest', 'leastBlocked', 'askedDay'] as const
export type OfferKind = (typeof offerKinds)[number]

/** A place as one lane, under all the names it goes by. */
export interface Lane {
  key: string
  names: string[]
  offer: PlaceView
  /** What must be here in time for it to hold; null: nothing. */
  ifHere: string | null
}

/** The offers as lanes: the same place is one lane, and one that would hold if goods came in time has its own. */
export function lanesOf(offers: Pick<OffersView, OfferKind>, nameOf: (kind: OfferKind) => string): Lane[] {
  const lanes: Lane[] = []
  const add = (key: string, name: string, offer: PlaceView, ifHere: string | null) => {
    const same = lanes.find(
      lane => lane.ifHere === ifHere && JSON.stringify(lane.offer.plan) === JSON.stringify(offer.plan),
    )
    if (same) same.names.push(name)
    else lanes.push({ key, names: [name], offer, ifHere })
  }
  const feasible = offerKinds.flatMap(kind => {
    const offer = offers[kind]
    return offer.feasible ? [{ kind, offer }] : []
  })
  for (const { kind, offer } of feasible) add(kind, nameOf(kind), offer, null)
  for (const { kind, offer } of feasible)
    if (offer.ifHere) add(`${kind}IfHere`, nameOf(kind), offer.ifHere.offer, offer.ifHere.words)
  return lanes
}

/** Extras, discount and agreed prices as the desk sends them; a discount that is half typed is none yet. */
export function pricingOf({ extraKeys, discount, agreed }: Call) {
  const percent = discount.percent.trim().replace(',', '.')
  const given = /^\d{1,3}(\.\d{1,2})?$/.test(percent) && Number(percent) > 0 && Number(percent) <= 100
  const reason = discount.reason.trim()
  return {
    extras: extraKeys.map(key => ({ key, quantity: '1' })),
    discounts: given && reason ? [{ treatmentId: null, amountMinor: null, percent, reason }] : [],
    agreed,
  }
}

/** What is still to be said before a place can be held; null where nothing is. A plate may come later. */
export function missingOf(call: Call): string | null {
  if (call.customerId === null && !call.customerName.trim()) return say('Whose car is it?')
  if (call.vehicleId === null && ![call.plate, call.make, call.colour].some(text => text.trim()))
    return say('Which car: a plate, or make and colour?')
  return null
}
