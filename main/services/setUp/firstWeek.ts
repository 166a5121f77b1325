import type { CureProfile } from '../../domain/cure/index.ts'
import { firstWeek } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Desk } from '../desk/desk.ts'
import { findShop } from '../desk/shopView.ts'

/** What a new shop has still to enter; null once that is done or long past, and for the demo. */
export async function getFirstWeek({ store: { read: tx }, now }: Desk) {
  const shop = await findShop(tx)
  if (!shop || shop.demo) return null
  const begun = await tx.auditLine.findFirst({
    where: { entity: 'shop', act: 'set up' },
    orderBy: { at: 'asc' },
    select: { at: true },
  })
  const sinceMin = begun && now() - begun.at
  // Most desks are long past it, and ask each time the board is opened.
  if (firstWeek(nothingDone, sinceMin) === null) return null
  const [treatments, coatings, job, lot, mail] = await Promise.all([
    tx.treatment.findMany({ where: { archivedAt: null }, select: { prices: true } }),
    tx.product.findMany({ where: { archivedAt: null, kind: 'coating' }, select: { cureProfile: true } }),
    tx.job.findFirst({ where: { status: { in: ['booked', 'inShop', 'handedOver'] } }, select: { id: true } }),
    tx.lot.findFirst({ select: { id: true } }),
    tx.mailSettings.findFirst({ select: { id: true } }),
  ])
  return firstWeek(
    {
      prices: treatments.every(({ prices }) =>
        Object.values(fromJson<Record<string, number>>(prices)).some(price => price > 0),
      ),
      cure: coatings.some(({ cureProfile }) => {
        const profile = fromJson<CureProfile | null>(cureProfile)
        return profile !== null && Object.values(profile.sources).includes('data sheet')
      }),
      booking: job !== null,
      shelf: lot !== null,
      papers: shop.address !== null && shop.phone !== null,
      mail: mail !== null,
    },
    sinceMin,
  )
}

const nothingDone = { prices: false, cure: false, booking: false, shelf: false, papers: false, mail: false }
