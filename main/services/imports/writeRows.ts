/** Everything a file adds, in the one act that takes it in. */
import { commonPracticeProfile } from '../../domain/cure/index.ts'
import type { NewCoating, NewProduct } from '../../domain/imports/index.ts'
import { centiOf } from '../../domain/shelf/index.ts'
import { type Plan, startingPlans } from '../../domain/upkeep/index.ts'
import { addImported, type ImportedEntity, type ImportedPieces, piecesOf } from '../../store/importRows.ts'
import type { Tx } from '../../store/store.ts'
import { cures } from '../setUp/products.ts'
import { planRow } from '../upkeep/begin.ts'
import { scaled } from '../upkeep/exposure.ts'
import { productLives } from '../upkeep/productLives.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import type { PlannedRows } from './planRows.ts'

type Add = (entity: ImportedEntity, rows: readonly object[]) => Promise<void>

export interface Stamp {
  readonly importId: string
  readonly at: number
  readonly who: string
}

/** What a file adds as it stands in it, made ready before anybody has to wait for it. */
export function readyRows({ customers, vehicles, coatings }: PlannedRows): ImportedPieces[] {
  return [
    piecesOf(
      'customer',
      customers.map(({ postal: _, tags, ...row }) => ({ ...row, tags: JSON.stringify(tags) })),
    ),
    piecesOf(
      'ownerReach',
      customers.filter(({ postal }) => postal !== '').map(({ id, postal }) => ({ customerId: id, postal })),
    ),
    piecesOf('vehicle', vehicles),
    piecesOf(
      'layer',
      coatings.map(({ renewedOn: _, ...layer }) => layer),
    ),
  ]
}

/** Writes what was made ready, and what follows from it for what is on file. */
export async function writeRows(
  tx: Tx,
  stamp: Stamp,
  planned: PlannedRows,
  ready: readonly ImportedPieces[],
): Promise<void> {
  for (const pieces of ready) await addImported(tx, stamp.importId, pieces)
  const add: Add = (entity, rows) => addImported(tx, stamp.importId, piecesOf(entity, rows))
  await addPlans(tx, stamp, planned.coatings, add)
  await addProducts(planned.products, add)
}

/**
 * The plans of cars that have none: the topper's renewal and the yearly inspection, counted from the last coat or its last
 * renewal, so that reminders begin at once. A first wash or a check-up of years ago is over.
 */
async function addPlans(tx: Tx, stamp: Stamp, coatings: readonly NewCoating[], add: Add): Promise<void> {
  if (coatings.length === 0) return
  const rules = await upkeepRules(tx)
  const lives = await productLives(tx)
  const standing = new Set(
    (await tx.upkeepPlan.findMany({ where: { archivedAt: null }, select: { vehicleId: true } })).map(
      ({ vehicleId }) => vehicleId,
    ),
  )
  const plans: ReturnType<typeof planRow>[] = []
  const entries: object[] = []
  for (const [vehicleId, layers] of Map.groupBy(coatings, ({ vehicleId }) => vehicleId)) {
    if (standing.has(vehicleId)) continue
    const last = layers.reduce((a, b) => (b.laidOn > a.laidOn ? b : a))
    const days = scaled(lives.get(last.productId)?.intervalDays ?? 365, {}, rules).days
    const start = {
      handoverOn: last.laidOn,
      firstWashDays: 7,
      checkUpDays: rules.checkUpDays,
      topperDays: days,
    }
    const of = { jobId: null, vehicleId, at: stamp.at }
    const lasting = startingPlans(start, () => crypto.randomUUID()).filter(({ kind }) => lasts(kind))
    plans.push(...lasting.map(plan => planRow(plan, of, last.productId, last.stage === 'coat')))
    const renewedOn = layers.reduce((day, each) => ((each.renewedOn ?? '') > day ? each.renewedOn! : day), '')
    const renewal = lasting.find(({ kind }) => kind === 'topper')
    if (renewedOn > last.laidOn && renewal)
      entries.push({
        actId: crypto.randomUUID(),
        vehicleId,
        planId: renewal.id,
        what: 'done',
        onDay: renewedOn,
        at: stamp.at,
        who: stamp.who,
      })
  }
  await add('upkeepPlan', plans)
  await add('upkeepEntry', entries)
}

const lasts = (kind: Plan['kind']) => kind === 'topper' || kind === 'inspection'

/** What cures begins with common practice, as a product entered by hand does; what has a content is counted. */
async function addProducts(products: readonly NewProduct[], add: Add): Promise<void> {
  const profile = JSON.stringify(commonPracticeProfile())
  await add(
    'product',
    products.map(({ id, name, kind, family }) => ({
      id,
      name,
      kind,
      family,
      cureProfile: cures(kind) ? profile : null,
    })),
  )
  const counted = products.flatMap(product =>
    product.content === null ? [] : [{ ...product, content: product.content }],
  )
  await add(
    'shelfProduct',
    counted.map(({ id, kind, content }) => ({
      productId: id,
      unit: content.unit,
      serviceClass: 'usual',
      holdsUpBookings: cures(kind) ? 1 : 0,
    })),
  )
  await add(
    'containerSize',
    counted.map(({ sizeId, id, label, content }) => ({
      id: sizeId,
      productId: id,
      label,
      labelCenti: centiOf(content.amount),
    })),
  )
}
