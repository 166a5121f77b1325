/** What the shelf as a whole warns of: chemicals that must not stand together, too much that burns, missing sheets. */

import { dayWords } from '../../domain/calendar/index.ts'
import { flammableStock, storageWarnings } from '../../domain/hazard/index.ts'
import { say } from '../../domain/language/index.ts'
import { amountText, unitsOf } from '../../domain/shelf/index.ts'
import { type LotRow, lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { shelfDay } from './countedProducts.ts'
import { fieldsOf, withSafety } from './safetyView.ts'
import { rulesOf } from './shelfRules.ts'

/** A sheet older than this is to be asked for again (common practice, no source). */
const sheetYears = 3

export type SafetyWarningsView = Awaited<ReturnType<typeof warningsOf>>

export function safetyWarnings(desk: Desk): Promise<SafetyWarningsView> {
  return warningsOf(desk.store.read, desk.now())
}

/**
 * Looks at the products with something on the shelf. It warns and records; it refuses nothing. `known` are the
 * bottles where they have been read already.
 */
export async function warningsOf(tx: Tx, nowAt: number, known?: readonly LotRow[]) {
  const [ground, rules, lots] = await Promise.all([shelfDay(tx, nowAt), rulesOf(tx), known ?? lotRows(tx)])
  const onHand = new Map<string, number>()
  for (const lot of lots) onHand.set(lot.productId, (onHand.get(lot.productId) ?? 0) + lot.centi)
  const rows = await tx.product.findMany({
    where: { id: { in: [...onHand.keys()] } },
    include: withSafety,
    orderBy: { name: 'asc' },
  })
  const chemicals = rows.filter(row => row.kind !== 'consumable' || row.safety !== null)
  const storage = storageWarnings(
    chemicals.map(row => ({
      id: row.id,
      name: row.name,
      place: row.shelf?.place || say('the shelf'),
      group: fieldsOf(row.safety).storageGroup,
    })),
  )
  const flammable = flammableStock(
    chemicals
      .filter(row => row.shelf?.unit !== 'piece')
      .map(row => ({
        id: row.id,
        volumeMl: volumeOf(onHand.get(row.id) ?? 0, row.shelf),
        codes: fieldsOf(row.safety).hazardCodes,
      })),
    rules.flammableLimitMl,
    volumeMl => amountText(volumeMl, 'ml'),
    rules.regimeUsed,
  )
  const old = Temporal.PlainDate.from(ground.date).subtract({ years: sheetYears }).toString()
  const { totalMl, byCode, combustibleMl, aerosolMl, silentMl, limitMl, share, state, message } = flammable
  return {
    storage: storage.map(({ place, ids, message: words }) => ({ place, productIds: [...ids], words })),
    flammable: {
      totalMl,
      byCode: { ...byCode },
      combustibleMl,
      aerosolMl,
      silentMl,
      limitMl,
      share,
      state,
      words: message,
    },
    /** Products on the shelf without a sheet, or with an old one. */
    sheets: chemicals.flatMap(row => {
      const words = sheetWords(row.name, row.safety, old)
      return words === null ? [] : [{ productId: row.id, productName: row.name, words }]
    }),
    caution: say(
      'The shelf warns and records. The data sheets, the local codes and licensed practice decide.',
    ),
  }
}

/** The volume on the shelf in ml; what is counted in grams by its density, or as water where none is known. */
function volumeOf(centi: number, shelf: { unit: string; densityGPerMl: number | null } | null): number {
  const amount = unitsOf(centi)
  return shelf?.unit === 'g' ? amount / (shelf.densityGPerMl ?? 1) : amount
}

function sheetWords(
  name: string,
  safety: { sheetFileId: string | null; revisedOn: string | null } | null,
  old: string,
): string | null {
  if (!safety?.sheetFileId)
    return say('No data sheet of {name} is kept here: ask the supplier for it.', { name })
  if (safety.revisedOn === null)
    return say('The data sheet of {name} is kept without the date of its revision.', { name })
  if (safety.revisedOn < old)
    return say('The data sheet of {name} is of {revisedOn}: ask the supplier whether there is a newer one.', {
      name,
      revisedOn: dayWords(safety.revisedOn),
    })
  return null
}
