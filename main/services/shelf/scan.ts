/** Codes on bottles: what a scanner or a hand sends in, and what it stands for here. */
import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import { isGtin, readGtin, readScan } from '../../domain/shelf/index.ts'
import { type LotRow, lotRows, lotRowsById } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { countedProduct, countedProducts, type ShelfDay, shelfDay } from './countedProducts.ts'
import type { CodeInput, LearnCodeInput } from './inputs.ts'
import { lotViews } from './lotViews.ts'

const lotPath = /\/shelf\/lot\/([\w-]+)/

/** Where the record of a bottle is: what its label's QR code says. The window's own scheme has no origin to name. */
export function lotUrl(origin: string, lotId: string): string {
  return `${origin.startsWith('http') ? origin : ''}/shelf/lot/${lotId}`
}

export type ScanView = Awaited<ReturnType<typeof scan>>

/** What a scanned or typed code stands for: a product, one bottle, nothing known yet, or a misread one. */
export async function scan(desk: Desk, input: CodeInput) {
  const tx = desk.store.read
  const ground = await shelfDay(tx, desk.now())
  const { text, gtin, expiresOn, batch } = readScan(input.code, Number(ground.date.slice(0, 4)))
  const own = await ownBottle(tx, text)
  if (own) return bottleView(tx, ground, text, own)
  const misread = gtin === null ? whyMisread(text) : null
  if (misread !== null) return { kind: 'badCheckDigit' as const, code: text, words: misread }
  const code = gtin ?? text
  const known = await tx.productCode.findUnique({ where: { code }, include: { size: true } })
  const product = known && (await countedProducts(tx, [known.productId])).get(known.productId)
  if (!known || !product)
    return {
      kind: 'unknown' as const,
      code,
      expiresOn,
      batch,
      words: say('This code is not known yet: choose the product it belongs to, and it is remembered.'),
    }
  return {
    kind: 'known' as const,
    code,
    productId: product.id,
    productName: product.name,
    unit: product.unit,
    /** Null where the code was learned without a size. */
    sizeId: known.sizeId,
    sizeLabel: known.size?.label ?? null,
    /** With the batch, where the code names them (GS1 DataMatrix): what to enter when goods come in. */
    expiresOn,
    batch,
    lots: lotViews(await lotRows(tx, [product.id]), product.unit, ground.day),
  }
}

/** A bottle of the shop's own: by the address on its label, or by its number. */
async function ownBottle(tx: Tx, text: string): Promise<LotRow | null> {
  const id = lotPath.exec(text)?.[1]
  if (id !== undefined) return (await lotRowsById(tx, [id]))[0] ?? null
  const number = /^(?:no\.?\s*)?(\d{1,7})$/i.exec(text)?.[1]
  if (number === undefined) return null
  const lot = await tx.lot.findUnique({ where: { number: Number(number) }, select: { id: true } })
  return lot ? ((await lotRowsById(tx, [lot.id]))[0] ?? null) : null
}

async function bottleView(tx: Tx, ground: ShelfDay, code: string, row: LotRow) {
  const product = (await countedProducts(tx, [row.productId])).get(row.productId)
  if (!product) refuse('missing', { code }, say('This bottle’s product is not counted any more.'))
  // Among its fellows it is known whether it is the next to take; an emptied one stands alone.
  const rows = await lotRows(tx, [product.id])
  const beside = rows.some(each => each.id === row.id) ? rows : [row]
  const lot = lotViews(beside, product.unit, ground.day).find(each => each.id === row.id)
  if (!lot) refuse('missing', { code }, say('This bottle is not on the shelf any more.'))
  const { id: productId, name: productName, unit } = product
  return { kind: 'bottle' as const, code, productId, productName, unit, lot }
}

/** Digits in the number of a GTIN whose check digit does not fit, in words; null for every other code. */
function whyMisread(text: string): string | null {
  const digits = text.replaceAll(/[\s-]/g, '')
  if (!/^(\d{8}|\d{12,14})$/.test(digits) || isGtin(digits)) return null
  try {
    readGtin(digits)
    return null
  } catch (error) {
    if (error instanceof Refusal) return error.message
    throw error
  }
}

/** Remembers what a code stands for. Refused for a misread code, and for one that stands for another product. */
export function learnCode(desk: Desk, input: LearnCodeInput): Promise<ScanView> {
  return act(desk, async (tx, audit) => {
    const { text, gtin } = readScan(input.code, 2000)
    const misread = gtin === null ? whyMisread(text) : null
    if (misread !== null) refuse('gtin-check-digit', { code: input.code }, misread)
    const code = gtin ?? text
    if (code === '' || code.length > 80)
      refuse('code-bad', { code: input.code }, say('A code has 1 to 80 characters; scan it again.'))
    await countedProduct(tx, input.productId)
    const size =
      input.sizeId == null ? null : await tx.containerSize.findUnique({ where: { id: input.sizeId } })
    if (input.sizeId != null && size?.productId !== input.productId)
      refuse('missing', { sizeId: input.sizeId }, say('This size is not one of the product.'))
    const known = await tx.productCode.findUnique({
      where: { code },
      include: { product: { select: { name: true } } },
    })
    if (known && known.productId !== input.productId)
      refuse(
        'code-known',
        { code },
        say('This code stands for {name}: have it forgotten there first, if that is wrong.', {
          name: known.product.name,
        }),
      )
    const data = {
      productId: input.productId,
      sizeId: size?.id ?? null,
      learnedAt: desk.now(),
      who: desk.who,
    }
    await tx.productCode.upsert({ where: { code }, update: data, create: { code, ...data } })
    audit({ act: 'code learned', entity: 'stock', entityId: input.productId, detail: { code } })
    return code
  }).then(code => scan(desk, { code }))
}

/** Forgets what a code stands for. */
export function forgetCode(desk: Desk, input: CodeInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    const known = await tx.productCode.findUnique({ where: { code: input.code } })
    if (!known) refuse('missing', { code: input.code }, say('This code is not known.'))
    await tx.productCode.delete({ where: { code: input.code } })
    audit({ act: 'code forgotten', entity: 'stock', entityId: known.productId, detail: { code: input.code } })
  })
}
