/** Products made in the shop by thinning a concentrate, and what of their draws falls on it. */
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkDilution, concentrateFor, countBack, shareWords } from '../../domain/shelf/index.ts'
import type { LotRow } from '../../store/lotRows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import type { ComingDraw, PastUse } from '../../store/useRows.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { countedProduct, holdingOfRow } from './countedProducts.ts'
import type { DilutionInput, DilutionSeen } from './inputs.ts'

/** How one product is made from another. */
export interface Made {
  readonly productId: string
  readonly concentrateId: string
  readonly waterParts: number
}

/** Says that a product is made by thinning another. */
export async function saveDilution(desk: Desk, input: DilutionInput): Promise<{ version: number }> {
  const { productId, version, ...data } = input
  checkDilution(data)
  return act(desk, async (tx, audit) => {
    const [product, concentrate] = [
      await countedProduct(tx, productId),
      await countedProduct(tx, data.concentrateId),
    ]
    if (concentrate.unit !== product.unit || product.unit === 'piece')
      refuse(
        'unit-differs',
        { concentrateId: data.concentrateId },
        say('{name} and {name2} must both be counted by volume, or both by weight.', {
          name: concentrate.name,
          name2: product.name,
        }),
      )
    // A chain of thinnings would be counted back through several products: one is what a shop does.
    const chained = await tx.dilution.count({
      where: { OR: [{ productId: data.concentrateId }, { concentrateId: productId }] },
    })
    if (chained > 0 || data.concentrateId === productId)
      refuse(
        'thinned-twice',
        { concentrateId: data.concentrateId },
        say('{name} is no concentrate for it: thin from the product as it was bought.', {
          name: concentrate.name,
        }),
      )
    const kept = { table: tx.dilution, entity: 'stock', noun: 'share' }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, data)
    return { version: saved.version }
  })
}

/** It is not made from a concentrate any more; its batches stay. */
export function removeDilution(desk: Desk, { productId, version }: DilutionSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    const { count } = await tx.dilution.deleteMany({ where: { productId, version } })
    assertFresh(count, 'share', productId)
    audit({ act: 'share removed', entity: 'stock', entityId: productId, detail: {} })
  })
}

/** How a product is made, and what is made of it. */
export async function dilutionView(tx: Tx, productId: string) {
  const rows = await tx.dilution.findMany({
    where: { OR: [{ productId }, { concentrateId: productId }] },
    include: { concentrate: { select: { name: true } }, product: { select: { name: true } } },
  })
  const own = rows.find(row => row.productId === productId)
  return {
    madeFrom: own
      ? {
          concentrateId: own.concentrateId,
          concentrateName: own.concentrate.name,
          waterParts: own.waterParts,
          lifeDays: own.lifeDays,
          version: own.version,
          words: say('{name}, {own}; a batch keeps {lifeDays} days', {
            name: own.concentrate.name,
            own: shareWords(own),
            lifeDays: own.lifeDays,
          }),
        }
      : null,
    makes: rows
      .filter(row => row !== own)
      .map(row => ({ productId: row.productId, words: `${row.product.name}, ${shareWords(row)}` })),
  }
}

/** How a product is made; refused where it is bought. */
export async function dilutionOf(tx: Tx, productId: string) {
  return found(
    await tx.dilution.findUnique({ where: { productId } }),
    { productId },
    say('Say first which concentrate it is made from, under How it is kept.'),
  )
}

/** These products with those made of them: whoever looks ahead for a concentrate looks at both. */
export function withMade(ids: readonly string[] | undefined, made: readonly Made[]): string[] | undefined {
  return ids && [...ids, ...made.filter(each => ids.includes(each.concentrateId)).map(each => each.productId)]
}

/** The draws to come by product: what batches do not serve falls on the concentrate. */
export function comingByProduct(
  coming: readonly ComingDraw[],
  lots: ReadonlyMap<string, readonly LotRow[]>,
  made: readonly Made[],
  dayOf: (at: number) => number,
): Map<string, ComingDraw[]> {
  const byProduct = Map.groupBy(coming, draw => draw.productId)
  for (const { productId, concentrateId, waterParts } of made) {
    const batches = (lots.get(productId) ?? []).map(holdingOfRow)
    const back = countBack(byProduct.get(productId) ?? [], batches, { waterParts }, draw => dayOf(draw.at))
    byProduct.set(productId, back.served)
    const mixed = back.toMix.map(draw => ({ ...draw, productId: concentrateId }))
    byProduct.set(
      concentrateId,
      [...(byProduct.get(concentrateId) ?? []), ...mixed].sort((a, b) => a.at - b.at),
    )
  }
  return byProduct
}

/** What was used of a ready-to-use product was used of its concentrate: that is what is bought. */
export function usesCountedBack(uses: ReadonlyMap<string, PastUse[]>, made: readonly Made[]) {
  const counted = new Map(uses)
  for (const { productId, concentrateId, ...share } of made) {
    const own = (counted.get(productId) ?? []).map(use => ({
      ...use,
      centi: concentrateFor(use.centi, share),
      expectedCenti: use.expectedCenti && concentrateFor(use.expectedCenti, share),
    }))
    counted.delete(productId)
    if (own.length > 0) counted.set(concentrateId, [...(counted.get(concentrateId) ?? []), ...own])
  }
  return counted
}

/** A wished draw of a ready-to-use product, as one of its concentrate. */
export function drawnBack<Draw extends { productId: string; expectedCenti: number }>(
  draw: Draw,
  made: readonly Made[],
): Draw {
  const of = made.find(each => each.productId === draw.productId)
  return of
    ? { ...draw, productId: of.concentrateId, expectedCenti: concentrateFor(draw.expectedCenti, of) }
    : draw
}
