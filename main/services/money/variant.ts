/** One way to treat a car, worked out for a quote: its price, how long it lasts, its upkeep and its soonest place. */

import { dateOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import type { Finish, PanelNoted, SizeClass } from '../../domain/shop/index.ts'
import { upkeepAhead } from '../../domain/upkeep/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Vehicle } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { offers } from '../booking/offers.ts'
import type { Desk } from '../desk/desk.ts'
import { sell } from '../setUp/soldTreatments.ts'
import { exposureOf, scaled } from '../upkeep/exposure.ts'
import { productLives } from '../upkeep/productLives.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { treatmentFor } from '../upkeep/visitTreatment.ts'
import type { QuoteInput } from './inputs.ts'

type Asked = Pick<QuoteInput, 'condition' | 'scope'> & QuoteInput['variants'][number]

/** How long a coat is taken to last. */
export interface Lasts {
  name: string
  days: number
  mark: string
}

/** Works one variant out as a caller would be answered now; refused where it has no price or no place. */
export async function workOut(desk: Desk, vehicle: Vehicle, asked: Asked, field: string) {
  const { name, ...pricing } = asked
  const car = { sizeClass: vehicle.sizeClass as SizeClass, finish: vehicle.finish as Finish }
  const answer = await under(field, () => offers(desk, { ...pricing, ...car, vehicleId: vehicle.id }))
  if (answer.unpriced.length > 0)
    refuse(
      'price-missing',
      { [`${field}.treatmentIds`]: answer.unpriced },
      say('{unpriced} has no price for this size; enter one under Settings, Treatments.', {
        unpriced: answer.unpriced.join(', '),
      }),
    )
  const { soonest } = answer
  if (!soonest.feasible)
    refuse(
      'no-place',
      { [`${field}.treatmentIds`]: name },
      soonest.reasons[0] ?? say('There is no place for it.'),
    )
  const ahead = await upkeepOf(desk, vehicle, asked, { handoverAt: soonest.handoverAt, zone: answer.zone })
  return {
    name,
    treatments: answer.treatments.map(({ id, name, priceMinor }) => ({ id, name, priceMinor })),
    charges: answer.charges,
    priceMinor: answer.priceMinor,
    dropOffAt: soonest.dropOffAt,
    handoverAt: soonest.handoverAt,
    ...ahead,
  }
}

/** What is refused of a variant is named at its place in the quote. */
async function under<Result>(field: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    throw new Refusal(error.code, `${field}.${error.field}`, error.value, error.message)
  }
}

/** What follows over three years, by the products that are laid and how the car lives. */
async function upkeepOf(
  desk: Desk,
  vehicle: Vehicle,
  { treatmentIds, condition, scope }: Asked,
  { handoverAt, zone }: { handoverAt: number; zone: string },
) {
  const tx = desk.store.read
  const sold = await sell(tx, {
    treatmentIds,
    condition,
    sizeClass: vehicle.sizeClass as SizeClass,
    finish: vehicle.finish as Finish,
    over: { panels: fromJson<PanelNoted[] | null>(vehicle.panels) ?? [], scope, nowAt: desk.now() },
  })
  const laid = sold.steps.filter(step => step.stage === 'coat' || step.stage === 'topper')
  const ids = [...new Set(laid.flatMap(step => (step.kind === 'work' && step.productId) || []))]
  const lives = await productLives(tx)
  const lasts = ids.flatMap((id): Lasts[] => {
    const life = lives.get(id)
    return life ? [{ name: life.productName, days: life.intervalDays, mark: life.mark }] : []
  })
  if (ids.length === 0) return { lasts, upkeepVisits: 0, upkeepMinor: 0 }
  const rules = await upkeepRules(tx)
  const { choices } = await exposureOf(tx, vehicle.id)
  const keepDry = ids.map(id => sold.products.get(id)?.cureProfile?.firstWashMin ?? 0)
  const counts = upkeepAhead(
    {
      handoverOn: dateOf(handoverAt, zone),
      firstWashDays: Math.max(1, Math.ceil(Math.max(...keepDry) / 1440)),
      checkUpDays: rules.checkUpDays,
      topperDays: scaled(lives.get(ids.at(-1)!)?.intervalDays ?? 365, choices, rules).days,
    },
    zone,
  )
  return { lasts, ...(await costOf(tx, counts, vehicle.sizeClass as SizeClass)) }
}

/** The visits and what they cost by today's prices of the treatments they are booked as; null where one has none. */
async function costOf(
  tx: Tx,
  counts: Awaited<ReturnType<typeof upkeepAhead>>,
  sizeClass: SizeClass,
): Promise<{ upkeepVisits: number; upkeepMinor: number | null }> {
  const rules = await upkeepRules(tx)
  let upkeepVisits = 0
  let upkeepMinor: number | null = 0
  for (const [kind, count] of counts) {
    upkeepVisits += count
    const priceMinor = await priceOf(tx, rules, kind, sizeClass)
    upkeepMinor = priceMinor === null || upkeepMinor === null ? null : upkeepMinor + count * priceMinor
  }
  return { upkeepVisits, upkeepMinor }
}

async function priceOf(
  tx: Tx,
  rules: Awaited<ReturnType<typeof upkeepRules>>,
  kind: Parameters<typeof treatmentFor>[2],
  sizeClass: SizeClass,
): Promise<number | null> {
  try {
    const { id } = await treatmentFor(tx, rules, kind)
    const row = await tx.treatment.findUniqueOrThrow({ where: { id } })
    return (row.prices as Record<SizeClass, number>)[sizeClass] || null
  } catch {
    // Nothing the shop sells fits this visit yet.
    return null
  }
}
