import { outsideSeasons } from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { majorOf, minorOf } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  checkConditionFactors,
  checkGrid,
  checkNote,
  checkShop,
  checkText,
  type SizeClass,
} from '../../domain/shop/index.ts'
import { readMailAddress, readPhone } from '../../domain/vehicle/index.ts'
import { noJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { calendarOf, findShop, type ShopView, shopOf } from '../desk/shopView.ts'
import { askOfHours } from './askOfHours.ts'
import type { ShopUpdate } from './inputs.ts'

/** The shop of this database; null before the first run is done. */
export function getShop(desk: Desk): Promise<ShopView | null> {
  return findShop(desk.store.read)
}

/**
 * Changes the shop. A change of hours or zone that leaves something booked outside the opening hours is refused with
 * `touches-bookings` until it is `accepted`; the currency stands once a job was booked in it.
 */
export function updateShop(desk: Desk, input: ShopUpdate): Promise<ShopView> {
  const { accepted, version, ...fields } = input
  checkShop(fields)
  checkGrid(fields.gridMin)
  checkConditionFactors(fields.conditionFactors)
  for (const season of outsideSeasons) {
    const celsius = fields.outsideUsual?.[season] ?? 0
    if (!(celsius >= -60 && celsius <= 60))
      refuse(
        'weather-impossible',
        { outsideUsual: celsius },
        say('That is no weather; give what is usual outside in that season.'),
      )
  }
  const data = {
    ...fields,
    name: checkText(fields.name, 'name', say("The shop's name")),
    phone: fields.phone?.trim() ? readPhone(fields.phone, fields.country).e164 : null,
    email: fields.email?.trim() ? readMailAddress(fields.email) : null,
    address: fields.address?.trim() ? checkNote(fields.address, 'address', 400) : null,
  }
  const written = {
    ...data,
    weekly: data.weekly as object[],
    conditionFactors: { ...data.conditionFactors },
    outsideUsual: data.outsideUsual ? toJson(data.outsideUsual) : noJson,
  }
  return act(desk, async (tx, audit, at) => {
    const before = await shopOf(tx)
    const calendar = await calendarOf(tx)
    await saveSingle(audit, { table: tx.shop, entity: 'shop' }, { key: { id: 1 }, version }, written)
    if (before.currency !== data.currency) await changeCurrency(tx, before.currency, data.currency)
    const field = before.zone === data.zone ? 'weekly' : 'zone'
    await askOfHours(tx, { before: calendar, nowAt: at, field, accepted })
    return shopOf(tx)
  })
}

/** Somebody has read what changed in the promises; it is not shown again. */
export function promisesRead(desk: Desk): Promise<void> {
  return act(desk, async (tx, audit) => {
    const { count } = await tx.shop.updateMany({
      where: { promisesChanged: true },
      data: { promisesChanged: false },
    })
    if (count > 0) audit({ act: 'read what changed', entity: 'shop', entityId: '1' })
  })
}

/** Rewrites the treatments' prices so that each keeps its figure: 1,250.00 stays 1,250.00, or 1,250 without cents. */
async function changeCurrency(tx: Tx, from: string, to: string): Promise<void> {
  const jobs = await tx.job.count()
  if (jobs > 0)
    refuse(
      'currency-in-use',
      { currency: to },
      say(
        '{jobs, plural, one {A job is} other {{jobs} jobs are}} priced in {from}, so it stays; a shop that changes its money begins with a new data folder.',
        { jobs, from },
      ),
    )
  for (const treatment of await tx.treatment.findMany()) {
    const prices = Object.fromEntries(
      Object.entries(treatment.prices as Record<SizeClass, number>).map(([size, minor]) => [
        size,
        minorOf(majorOf(minor, from), to, 'half-up'),
      ]),
    )
    await tx.treatment.update({ where: { id: treatment.id }, data: { prices, version: { increment: 1 } } })
  }
}
