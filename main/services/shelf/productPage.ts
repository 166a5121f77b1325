/** Everything about one product on the shelf, and the list of all of them. */

import { labelFromCodes } from '../../domain/hazard/index.ts'
import { decimalNow, say } from '../../domain/language/index.ts'
import { degreesWords, type UnitSystem } from '../../domain/measure/index.ts'
import { found } from '../../domain/refusal.ts'
import { labelError, type MoveKind, type Unit, unitsOf } from '../../domain/shelf/index.ts'
import { lotRows } from '../../store/lotRows.ts'
import { type LedgerRow, ledgerRows } from '../../store/moveRows.ts'
import type { ContainerSize, ShelfProduct } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { adviceView } from './adviceViews.ts'
import { shelfAhead } from './ahead.ts'
import { shelfDay } from './countedProducts.ts'
import { dilutionView } from './dilutions.ts'
import type { ServiceClass, ShelfFields } from './inputs.ts'
import { learningOf } from './learning.ts'
import { amountsOf, lotViews } from './lotViews.ts'
import { lifeProposal } from './openedLife.ts'
import { linesByProduct, ordersOf } from './orders/propose.ts'
import { jobNamesOf, jobsHit, projectionView } from './projectionViews.ts'
import { recipesWith } from './recipes.ts'
import { reusablesOf } from './reusables.ts'
import { safetyOf } from './safety.ts'
import { fieldsOf } from './safetyView.ts'
import { rulesOf } from './shelfRules.ts'
import { offerView, withSize } from './supplierOffers.ts'
import { productWorth } from './value.ts'
import { moveWords } from './words.ts'

/** Lines of the ledger a page holds. */
const pageMoves = 50

/** The page of one product; of one that is not counted yet only what can be said without counting. */
export type ShelfProductView = Awaited<ReturnType<typeof shelfProduct>>

export async function shelfProduct(desk: Desk, input: { id: string }) {
  const tx = desk.store.read
  const product = await tx.product.findUnique({
    where: { id: input.id },
    include: {
      shelf: true,
      sizes: { include: { codes: true }, orderBy: { labelCenti: 'asc' } },
      codes: true,
    },
  })
  const row = found(product, { id: input.id }, say('This product is not there; look at the shelf again.'))
  const offers = await tx.supplierOffer.findMany({
    where: { productId: row.id },
    include: withSize,
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { preferred: 'desc' }, { id: 'asc' }],
  })
  const base = {
    id: row.id,
    name: row.name,
    kind: row.kind,
    sizes: row.sizes.map(size => sizeView(size, size.codes)),
    offers: offers.map(offerView),
    recipes: await recipesWith(tx, row.id),
    safety: await safetyOf(tx, row.id),
    /** Sets in use, where its pieces are washed and used again. */
    reusables: await reusablesOf(tx, row.id),
    /** From which concentrate it is made, and what is made from it. */
    ...(await dilutionView(tx, row.id)),
  }
  const shelf = await shelfAhead(desk, tx, { productIds: [row.id] })
  const of = shelf.products.get(row.id)
  const { ground } = shelf
  // The whole shelf decides whether an order goes out today; here only this product is asked.
  const line = linesByProduct(ordersOf(shelf)).get(row.id) ?? null
  return {
    ...base,
    ...amountsOf(of?.rows ?? [], ground.day),
    /** Of the shelf's record; 0 where the product is not counted yet. */
    version: row.shelf?.version ?? 0,
    /** Null: the product is not counted yet; `shelf.saveProduct` begins it. */
    shelf: row.shelf && shelfFields(row.shelf),
    lots: of ? lotViews(of.rows, of.product.unit, ground.day) : [],
    ledger: await ledgerPage(desk, { productId: row.id }),
    projection: of ? projectionView(of, shelf, await jobNamesOf(tx, jobsHit([of]))) : null,
    advice: of ? adviceView(of, line) : null,
    learning: of ? await learningOf(tx, of.product) : [],
    /** A shorter life once opened, where bottles went off before their date. */
    lifeProposal: of ? await lifeProposal(tx, of.product, ground) : null,
    value: of ? await productWorth(desk, of.product, ground.currency) : null,
    /** What the data sheet asks of the place it is kept in. */
    storageWords:
      row.shelf && storageWords(row.shelf, (await tx.shop.findFirstOrThrow()).units as UnitSystem),
  }
}

function shelfFields({ productId: _, version: __, ...fields }: ShelfProduct): ShelfFields {
  return fields as ShelfFields
}

export type SizeView = ReturnType<typeof sizeView>

function sizeView(size: ContainerSize, codes: readonly { code: string }[]) {
  const error = labelError({
    id: size.id,
    productId: size.productId,
    labelCenti: size.labelCenti,
    measuredCenti: size.measuredCenti,
    gtins: [],
  })
  const percent = error === null ? 0 : Math.round(Math.abs(error) * 1000) / 10
  return {
    id: size.id,
    version: size.version,
    label: size.label,
    labelAmount: unitsOf(size.labelCenti),
    /** What such a container was found to hold. */
    measuredAmount: size.measuredCenti === null ? null : unitsOf(size.measuredCenti),
    measuredWords:
      error === null
        ? null
        : percent === 0
          ? say('measures what the label says')
          : error > 0
            ? say('measures {percent} % more than the label says', { percent: decimalNow(percent) })
            : say('measures {percent} % less than the label says', { percent: decimalNow(percent) }),
    tareG: size.tareG,
    codes: codes.map(each => each.code),
    archivedAt: size.archivedAt,
  }
}

function storageWords(
  shelf: { storageLeastC: number | null; storageMostC: number | null },
  units: UnitSystem,
): string | null {
  const [least, most] = [shelf.storageLeastC, shelf.storageMostC].map(celsius =>
    celsius === null ? null : degreesWords(celsius, units),
  )
  if (least && most)
    return say('Keep it between {least} and {most}; the data sheet decides.', { least, most })
  if (least) return say('Keep it at {least} or warmer; the data sheet decides.', { least })
  return most ? say('Keep it at {most} or cooler; the data sheet decides.', { most }) : null
}

/** A page of a product's ledger, newest first. */
export async function ledgerPage(
  desk: Desk,
  input: { productId: string; before?: number | null | undefined },
) {
  const tx = desk.store.read
  const rows = await ledgerRows(tx, input.productId, input.before ?? null, pageMoves + 1)
  const shelf = await tx.shelfProduct.findUnique({ where: { productId: input.productId } })
  const unit = (shelf?.unit ?? 'ml') as Unit
  const shown = rows.slice(0, pageMoves)
  return {
    moves: shown.map(row => moveView(row, unit)),
    /** Pass as `before` for the page after; null: that was the last. */
    before: rows.length > pageMoves ? (shown.at(-1)?.seq ?? null) : null,
  }
}

/** A line of the ledger. */
export type MoveView = ReturnType<typeof moveView>

function moveView({ jobId, jobNumber, plate, stepName, centi, ...row }: LedgerRow, unit: Unit) {
  const job =
    jobId === null || jobNumber === null
      ? null
      : { id: jobId, number: jobNumber, plate: plate ?? '', stepName: stepName ?? '' }
  return {
    ...row,
    kind: row.kind as MoveKind,
    /** Signed: what it adds to the bottle. */
    amount: unitsOf(centi),
    /** The job a use served. */
    job,
    words: moveWords({ ...row, centi }, unit, job),
  }
}

export type ShelfListItem = Awaited<ReturnType<typeof shelfList>>[number]

/** All products, those counted with what is there, the others to begin with: their unit is null. */
export async function shelfList(desk: Desk) {
  const tx: Tx = desk.store.read
  const [ground, rules, lots, products] = await Promise.all([
    shelfDay(tx, desk.now()),
    rulesOf(tx),
    lotRows(tx),
    tx.product.findMany({
      where: { archivedAt: null },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
      include: { shelf: true, safety: true },
    }),
  ])
  const byProduct = Map.groupBy(lots, row => row.productId)
  return products.map(product => {
    const unit = product.shelf ? (product.shelf.unit as Unit) : null
    const rows = byProduct.get(product.id) ?? []
    const views = lotViews(rows, unit ?? 'ml', ground.day)
    const safety = fieldsOf(product.safety)
    const label = labelFromCodes(safety.hazardCodes ?? [], rules.regimeUsed, safety.signalWord)
    return {
      id: product.id,
      name: product.name,
      kind: product.kind,
      unit,
      place: product.shelf?.place ?? '',
      serviceClass: (product.shelf?.serviceClass ?? null) as ServiceClass | null,
      ...amountsOf(rows, ground.day),
      lots: views.length,
      openLot: views.find(view => view.state === 'open') ?? null,
      nextExpiry: views.flatMap(view => view.lastOn ?? []).sort()[0] ?? null,
      signalWord: safety.signalWord === 'none' ? null : (safety.signalWord ?? label.signalWord),
      pictograms: [...label.pictograms],
    }
  })
}
