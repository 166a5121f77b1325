import type { Regime } from '../../domain/hazard/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { checkMinor } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import type { RulesInput, ServiceClass } from './inputs.ts'

/** Shares of draws that find their amount where the owner has set nothing else (common practice, no source). */
export const usualServices: Readonly<Record<ServiceClass, number>> = { vital: 0.99, usual: 0.95, handy: 0.9 }

/** What holding goods costs a year, as a share of their price (common practice, no source). */
const usualHoldRate = 0.25

export type ShelfRulesView = Awaited<ReturnType<typeof rulesOf>>

/** The rules as the owner has set them, or as they usually are. */
export async function rulesOf(tx: Tx) {
  const [shop, row] = await Promise.all([shopOf(tx), tx.shelfRules.findFirst()])
  const regime = (row?.regime ?? null) as Regime | null
  const usual: Regime = shop.country === 'US' ? 'us-osha' : europe.has(shop.country) ? 'eu-clp' : 'un-ghs'
  return {
    services: { ...usualServices, ...(row?.services as object) } as Record<ServiceClass, number>,
    holdRatePerYear: row?.holdRatePerYear ?? usualHoldRate,
    lineCostMinor: row?.lineCostMinor ?? 0,
    flammableLimitMl: row?.flammableLimitMl ?? null,
    regime,
    /** Where none was chosen, the one usual in the shop's country. */
    regimeUsed: regime ?? usual,
    version: row?.version ?? 0,
  }
}

/** The rules for their screen. */
export function getRules(desk: Desk): Promise<ShelfRulesView> {
  return rulesOf(desk.store.read)
}

/** Where the CLP regulation holds: the European Economic Area (from memory). */
const europe = new Set(
  'AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IS IT LI LT LU LV MT NL NO PL PT RO SE SI SK'.split(' '),
)

/** Sets the rules of the shelf; `version` 0 where nothing was set yet. */
export async function saveRules(desk: Desk, input: RulesInput): Promise<ShelfRulesView> {
  checkRules(input)
  return act(desk, async (tx, audit) => {
    const { version, services, ...rest } = input
    const data = { ...rest, services: { ...services } }
    const kept = { table: tx.shelfRules, entity: 'stock', noun: word('shelf rules') }
    await saveSingle(audit, kept, { key: { id: 1 }, version }, data)
    return rulesOf(tx)
  })
}

function checkRules({ services, holdRatePerYear, lineCostMinor, flammableLimitMl }: RulesInput): void {
  for (const [name, share] of Object.entries(services))
    if (!(share >= 0.5 && share <= 0.999))
      refuse(
        'service-bad',
        { [`services.${name}`]: share },
        say('{share} % of draws cannot be aimed at; give 50 to 99.9 %.', {
          share: Math.round(share * 1000) / 10,
        }),
      )
  if (!(holdRatePerYear > 0 && holdRatePerYear <= 2))
    refuse(
      'rate-bad',
      { holdRatePerYear },
      say('Give what holding goods for a year costs as a share of their price: more than 0, at most 200 %.'),
    )
  if (checkMinor(lineCostMinor, 'lineCostMinor') < 0)
    refuse('cost-bad', { lineCostMinor }, say('Booking in a line costs 0 or more.'))
  if (flammableLimitMl !== null && !(Number.isInteger(flammableLimitMl) && flammableLimitMl > 0))
    refuse(
      'limit-not-positive',
      { flammableLimitMl },
      say('Enter the volume your local code allows, or leave it empty.'),
    )
}
