import type { HoursException, OpeningHours, ShopCalendar, WallSpan } from '../../domain/calendar/index.ts'
import type { OutsideUsual } from '../../domain/cure/index.ts'
import type { ClockHours, DateOrder, Language } from '../../domain/language/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { ConditionFactors, HandoverRule, UnitSystem } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import { keptUntilSaved } from '../../store/kept.ts'
import type { Tx } from '../../store/store.ts'

/** The shop of this database; null before the first run is done. */
export const findShop = keptUntilSaved(readShop)

export type ShopView = NonNullable<Awaited<ReturnType<typeof findShop>>>

async function readShop(tx: Tx) {
  const shop = await tx.shop.findFirst()
  if (!shop) return null
  const { id: _, ...fields } = shop
  return {
    ...fields,
    units: shop.units as UnitSystem,
    language: shop.language as Language,
    clockHours: shop.clockHours as ClockHours | null,
    dateOrder: shop.dateOrder as DateOrder | null,
    handoverRule: shop.handoverRule as HandoverRule,
    weekly: fromJson<OpeningHours[]>(shop.weekly),
    conditionFactors: fromJson<ConditionFactors>(shop.conditionFactors),
    outsideUsual: fromJson<OutsideUsual | null>(shop.outsideUsual),
  }
}

/** The shop, refused where there is none yet. */
export async function shopOf(tx: Tx): Promise<ShopView> {
  const shop = await findShop(tx)
  if (!shop) throw new Refusal('missing', 'shop', null, say('There is no shop yet: set it up first.'))
  return shop
}

/** The shop's opening hours with their exceptions, as they are now written. */
export async function calendarOf(tx: Tx): Promise<ShopCalendar> {
  const { zone, weekly } = await shopOf(tx)
  return { zone, weekly, exceptions: await exceptionsOf(tx) }
}

const exceptionsOf = keptUntilSaved(async (tx: Tx): Promise<HoursException[]> => {
  const rows = await tx.hoursException.findMany({ orderBy: { date: 'asc' } })
  return rows.map(({ date, hours }) => ({ date, hours: fromJson<WallSpan[]>(hours) }))
})
