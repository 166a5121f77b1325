import { expect, test } from 'vitest'
import { zonedOf } from '../../main/domain/calendar/index.ts'
import { instantOf } from '../../main/domain/calendar/instants.ts'
import { commonPracticeProfile } from '../../main/domain/cure/index.ts'
import { offers } from '../../main/services/booking/offers.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { saveProduct } from '../../main/services/setUp/products.ts'
import { setUpShop } from '../../main/services/setUp/shopSetUp.ts'
import { saveTreatment } from '../../main/services/setUp/treatments.ts'
import { makeDesk } from './makeDesk.ts'

/** A shop open every day 08:00 to 18:00 that sells one coat whose profile keeps the car for `handoverMin`. */
async function coatShop(desk: Desk, zone: string, handoverMin: number, coatMin: number): Promise<string> {
  await setUpShop(desk, {
    name: 'Ashdown Paint Care',
    zone,
    currency: 'EUR',
    units: 'metric',
    country: 'US',
    weekly: [1, 2, 3, 4, 5, 6, 7].map(weekday => ({ weekday, from: 480, to: 1080 })),
    bays: [{ name: 'Bay 1', capabilities: ['clean', 'cure'] }],
    crew: [{ name: 'Jo', skills: ['coat'] }],
    starters: false,
  })
  const cureProfile = {
    ...commonPracticeProfile(),
    handoverMin,
    keepDryMin: handoverMin,
    handoverAdvisedMin: Math.max(handoverMin, 720),
  }
  const product = await saveProduct(desk, { name: 'Ovrel One', kind: 'coating', cureProfile })
  const treatment = await saveTreatment(desk, {
    name: 'One layer',
    summary: '',
    prices: { small: 1, medium: 1, large: 1, xl: 1 },
    steps: [
      {
        name: 'Layer',
        stage: 'coat',
        needs: 'clean',
        skill: 'coat',
        crew: 1,
        splittable: false,
        sameBay: false,
        waitMin: null,
        waitMax: null,
        minutes: { small: coatMin, medium: coatMin, large: coatMin, xl: coatMin },
        byCondition: false,
        productId: product.id,
      },
    ],
  })
  return treatment.id
}

async function askedToday(now: string, zone: string, handoverMin: number, coatMin: number) {
  const desk = await makeDesk(now)
  try {
    const id = await coatShop(desk, zone, handoverMin, coatMin)
    const { askedDay } = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds: [id] })
    if (!askedDay.feasible) throw new Error(askedDay.reasons.join(' '))
    return askedDay
  } finally {
    await desk.close()
  }
}

test.each([
  // A coat finished at 17:30 whose hold is 12 h blocks 30 open minutes; finished at 09:00 it blocks 9 h.
  ['2026-04-15T16:00:00Z', 90, 30],
  ['2026-04-15T08:00:00Z', 60, 9 * 60],
])('An overnight cure blocks only what is open of it (from %s)', async (now, coatMin, blocked) => {
  const offer = await askedToday(now, 'UTC', 720, coatMin)
  expect(offer.blockedOpenMin).toBe(blocked)
  expect(offer.closedCureMin).toBe(720 - blocked)
})

// The nights on which the clocks change. Source: the IANA time zone database, rules US and EU.
const changes: [string, string, number][] = [
  ['America/New_York', '2026-03-07', -60],
  ['America/New_York', '2026-10-31', 60],
  ['America/New_York', '2027-03-13', -60],
  ['America/New_York', '2027-11-06', 60],
  ['Europe/Berlin', '2026-03-28', -60],
  ['Europe/Berlin', '2026-10-24', 60],
  ['Europe/Berlin', '2027-03-27', -60],
  ['Europe/Berlin', '2027-10-30', 60],
]

test.each(changes)(
  'In %s the cure of the night after %s lasts its own 12 hours',
  async (zone, eve, longerMin) => {
    const now = Temporal.PlainDateTime.from(`${eve}T16:00`).toZonedDateTime(zone).toInstant()
    const offer = await askedToday(now.toString(), zone, 720, 90)
    const hold = offer.plan.steps[1]!
    expect(instantOf(hold.start).until(instantOf(hold.end)).total('hours')).toBe(12)
    // On the wall the hold that begins 17:30 ends at 05:30 but for the change.
    const ends = zonedOf(hold.end, zone)
    expect(ends.hour * 60 + ends.minute).toBe(5 * 60 + 30 - longerMin)
    expect(zonedOf(offer.handoverAt, zone).hour).toBe(8)
    expect(offer.blockedOpenMin).toBe(30)
    expect(offer.closedCureMin).toBe(690)
  },
)
