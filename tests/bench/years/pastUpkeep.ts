/** What followed each coating over the years: plans, visits done or left undone, the reminders before them. */
import { dateOf, dateOfDay, dayNumber, startOfDay } from '../../../main/domain/calendar/index.ts'
import { messageId, startingPlans } from '../../../main/domain/upkeep/index.ts'
import { planRow } from '../../../main/services/upkeep/begin.ts'
import type { Random } from '../simulation/random.ts'
import type { Row } from './insertRows.ts'
import type { Rows } from './pastVisits.ts'
import type { Car, Owner } from './people.ts'

export interface Coating {
  jobId: string
  productId: string
  at: number
}

/** A place that was held for a reminder and came to nothing: its time ran out, or the owner chose the other one. */
export type DeadPlace = (
  car: Car,
  at: number,
  how: 'lapsed' | 'released',
) => { id: string; dropOffAt: number; handoverAt: number; rows: Rows }

const topperDays = 270
const body = (name: string) =>
  `Dear ${name},\nthe protection of your car is due for renewal. We have kept two times for you; tell us which suits, and we will have everything ready. Should neither do, call us at the desk.\nKind regards`

/** The plans of one car from its last coating on, with what was done under them; earlier ones have ended. */
export function carUpkeep(
  car: Car,
  owner: Owner,
  coatings: readonly Coating[],
  ground: { nowAt: number; zone: string; random: Random; dead: DeadPlace },
): Rows {
  const { nowAt, zone, random, dead } = ground
  const plans: Row[] = []
  const entries: Row[] = []
  const messages: Row[] = []
  const held: Rows = []
  const today = dayNumber(dateOf(nowAt, zone))
  const soldOn = random() < 0.08 ? today - Math.floor(random() * 700) : null
  for (const [i, coating] of coatings.entries()) {
    const until = coatings[i + 1]?.at ?? null
    const last = until === null ? Math.min(today, soldOn ?? today) : dayNumber(dateOf(until, zone))
    const handoverOn = dateOf(coating.at, zone)
    const started = startingPlans(
      { handoverOn, firstWashDays: 8, checkUpDays: 42, topperDays },
      kind => `${coating.jobId}.${kind}`,
    )
    for (const plan of started)
      plans.push({
        ...planRow(plan, { ...coating, vehicleId: car.id }, coating.productId, true),
        archivedAt: until,
      })
    // Who keeps coming, and how long, differs from owner to owner.
    const faithful = 0.7 + 0.28 * random()
    for (const { id: planId, kind } of started) {
      const every = { 'first-wash': 8, 'check-up': 42, topper: topperDays, inspection: 365, other: 365 }[kind]
      const once = kind === 'first-wash' || kind === 'check-up'
      let due = dayNumber(handoverOn) + every
      while (due <= last && random() < faithful) {
        const done = due + Math.floor(random() * 6)
        if (done > last) break
        const ruleOn = dateOfDay(due)
        const at = startOfDay(dateOfDay(done), zone) + 15 * 60
        entries.push(entryRow(car.id, at, { planId, what: 'done', ruleOn, onDay: dateOfDay(done) }))
        const message = reminder(car, owner, planId, ruleOn, at - 14 * 1440, random)
        if (message && !once) {
          const places = (['lapsed', 'released'] as const).map(how => dead(car, at - 14 * 1440, how))
          held.push(...places.flatMap(place => place.rows))
          const heldUntilAt = at - 7 * 1440
          message.slots = JSON.stringify(
            places.map(({ id: jobId, dropOffAt, handoverAt }) => ({
              jobId,
              dropOffAt,
              handoverAt,
              heldUntilAt,
            })),
          )
        }
        if (message) messages.push(message)
        if (once) break
        due = done + every
      }
    }
  }
  if (soldOn !== null)
    entries.push(
      entryRow(car.id, startOfDay(dateOfDay(soldOn), zone) + 600, { what: 'sold', onDay: dateOfDay(soldOn) }),
    )
  return [...held, ['UpkeepPlan', plans], ['UpkeepEntry', entries], ['Message', messages]]
}

function entryRow(
  vehicleId: string,
  at: number,
  entry: { planId?: string; what: string; ruleOn?: string; onDay: string },
): Row {
  const { planId = null, what, ruleOn = null, onDay } = entry
  return {
    actId: `${planId ?? vehicleId}.${onDay}`,
    vehicleId,
    planId,
    what,
    ruleOn,
    onDay,
    at,
    who: 'front desk',
  }
}

/** The one reminder before a visit, by the ways the owner can be reached. */
function reminder(
  car: Car,
  { id: customerId, name, email, phone }: Owner,
  planId: string,
  ruleOn: string,
  sentAt: number,
  random: Random,
): Row | null {
  const channel = email === null ? 'call' : 'email'
  const address = email ?? phone
  if (address === null) return null
  const booked = random() < 0.6
  const mailId = messageId({ visitId: `${planId} ${ruleOn}`, channel, tryNo: 1 }, 'example.com')
  return {
    id: `years-message-${planId}-${ruleOn}`,
    mailId,
    customerId,
    vehicleId: car.id,
    planId,
    ruleOn,
    channel,
    address,
    tryNo: 1,
    templateId: `reminder-${channel}`,
    language: 'en',
    subject: `protection renewal for your ${car.make} ${car.model}`,
    body: body(name),
    unfilled: '[]',
    slots: '[]',
    state: 'sent',
    attempts: 1,
    sentAt,
    outcome: booked ? 'booked' : null,
    outcomeAt: booked ? sentAt + 1500 : null,
    createdAt: sentAt - 60,
  }
}

/** Consent by e-mail of nine owners in ten that have an address, by telephone of half of them. */
export function consentRows(owners: readonly Owner[], at: number): Row[] {
  return owners.flatMap(({ id: customerId, email, phone }, n) => {
    const row = (channel: string, address: string): Row => ({
      id: `years-consent-${n}-${channel}`,
      customerId,
      channel,
      what: 'given',
      at,
      address,
      source: 'intake form',
      wording: 'I agree to be reminded when my car is due for upkeep. I can take this back at any time.',
      who: 'front desk',
    })
    return [
      ...(email !== null && n % 10 !== 0 ? [row('email', email)] : []),
      ...(phone !== null && n % 2 === 0 ? [row('call', phone)] : []),
    ]
  })
}
