/** The safety records of products: what was read off each data sheet, and the sheet itself as a file. */
import { createHash } from 'node:crypto'
import { checkDate } from '../../domain/calendar/index.ts'
import {
  hazardStatement,
  normaliseCode,
  precautionaryStatement,
  readUnNumber,
  storageGroups,
} from '../../domain/hazard/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { noJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { fieldsOf, safetyView, withSafety } from './safetyView.ts'
import { rulesOf } from './shelfRules.ts'
import type { SafetyFields, SafetyView } from './views/safety.ts'

/** One product's safety record; silent on everything where nobody has entered any. */
export async function getSafety(desk: Desk, input: { productId: string }): Promise<SafetyView> {
  return safetyOf(desk.store.read, input.productId)
}

export async function safetyOf(tx: Tx, productId: string): Promise<SafetyView> {
  const row = await tx.product.findUnique({ where: { id: productId }, include: withSafety })
  if (!row) throw new Refusal('missing', 'productId', productId, 'This product is not there.')
  return safetyView(row, (await rulesOf(tx)).regimeUsed)
}

export interface SafetyInput extends SafetyFields {
  productId: string
  /** Left out, or 0, where nothing has been entered yet. */
  version?: number | undefined
}

/** Enters what was read off a data sheet. Codes are kept in one spelling; those the lists do not hold are refused. */
export function saveSafety(desk: Desk, input: SafetyInput): Promise<SafetyView> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { productId, version = 0 } = input
    const data = checkedFields(input)
    await writeSafety(tx, productId, version, {
      ...data,
      hazardCodes: data.hazardCodes ?? noJson,
      precautionaryCodes: data.precautionaryCodes ?? noJson,
      protection: data.protection ?? noJson,
    })
    const view = await safetyOf(tx, productId)
    audit({ act: 'safety entered', entity: 'safety', entityId: productId, detail: { ...data } })
    return view
  })
}

function checkedFields(input: SafetyInput): SafetyFields {
  const { revisedOn, hazardCodes, precautionaryCodes, protection, storageGroup, unNumber, ph } = input
  if (revisedOn !== null) checkDate(revisedOn, 'revisedOn')
  hazardCodes?.forEach((code, i) => {
    hazardStatement(code, 'eu-clp', `hazardCodes.${i}`)
  })
  precautionaryCodes?.forEach((code, i) => {
    precautionaryStatement(code, 'eu-clp', `precautionaryCodes.${i}`)
  })
  if (storageGroup !== null && !storageGroups.includes(storageGroup))
    throw new Refusal(
      'storage-group-unknown',
      'storageGroup',
      storageGroup,
      'Choose one of the storage groups.',
    )
  if (ph !== null && !(ph >= 0 && ph <= 14))
    throw new Refusal('ph-bad', 'ph', ph, `A pH of ${ph} cannot be; it lies between 0 and 14.`)
  return {
    revisedOn,
    hazardCodes: hazardCodes && [...new Set(hazardCodes.map(normaliseCode))],
    precautionaryCodes: precautionaryCodes && [...new Set(precautionaryCodes.map(normaliseCode))],
    signalWord: input.signalWord,
    protection: protection?.map((each, i) => checkNote(each, `protection.${i}`, 120)).filter(Boolean) ?? null,
    storageGroup,
    unNumber: unNumber === null || unNumber === 'none' ? unNumber : readUnNumber(unNumber),
    ph,
    maker: checkNote(input.maker, 'maker', 200),
    note: checkNote(input.note, 'note', 1_000),
  }
}

type Written = Parameters<Tx['productSafety']['updateMany']>[0]['data']

async function writeSafety(tx: Tx, productId: string, version: number, data: Written): Promise<void> {
  const before = await tx.productSafety.findUnique({ where: { productId }, select: { version: true } })
  if (before) {
    const { count } = await tx.productSafety.updateMany({
      where: { productId, version },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'safety record', productId)
    return
  }
  if ((await tx.product.count({ where: { id: productId } })) === 0)
    throw new Refusal('missing', 'productId', productId, 'This product is not there.')
  await tx.productSafety.create({ data: { productId } })
  await tx.productSafety.updateMany({ where: { productId }, data })
}

export interface SheetInput {
  productId: string
  fileName: string
  /** The day of the sheet's revision, as printed on it. */
  revisedOn: string
  bytes: Uint8Array
  /** Of the safety record; 0 where there is none. */
  version?: number | undefined
}

const mostBytes = 15 * 1024 * 1024

/**
 * Keeps a data sheet as a file, with the date of its revision. What it is is read off its first bytes, not believed;
 * the sheets before it stay in the database.
 */
export async function uploadSheet(desk: Desk, input: SheetInput): Promise<SafetyView> {
  const { productId, bytes, revisedOn } = input
  checkDate(revisedOn, 'revisedOn')
  if (bytes.length === 0 || bytes.length > mostBytes)
    throw new Refusal(
      'file-size',
      'file',
      bytes.length,
      bytes.length === 0
        ? 'The file is empty.'
        : 'The file is larger than 15 MB; scan it at a lower resolution.',
    )
  const type = typeOf(bytes)
  if (!type)
    throw new Refusal(
      'file-type',
      'file',
      input.fileName,
      'A data sheet is a PDF, or a picture (PNG, JPEG) of one.',
    )
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const file = await tx.storedFile.create({
      data: {
        name: checkNote(input.fileName.replaceAll(/[/\\]/g, ' '), 'fileName', 120) || 'data sheet',
        type,
        bytes: new Uint8Array(bytes),
        size: bytes.length,
        sha256: createHash('sha256').update(bytes).digest('hex'),
        at: desk.now(),
        who: desk.who,
      },
    })
    const before = fieldsOf(await tx.productSafety.findUnique({ where: { productId } }))
    const version =
      input.version ?? (await tx.productSafety.findUnique({ where: { productId } }))?.version ?? 0
    await writeSafety(tx, productId, version, { sheetFileId: file.id, revisedOn })
    audit({
      act: 'data sheet kept',
      entity: 'safety',
      entityId: productId,
      detail: { ...changesBetween({ revisedOn: before.revisedOn }, { revisedOn }), sha256: file.sha256 },
    })
    return safetyOf(tx, productId)
  })
}

/** What a file is, by its first bytes (PDF 32000-1 7.5.2; PNG 5.2; JPEG SOI). */
function typeOf(bytes: Uint8Array): string | null {
  const begins = (...head: number[]) => head.every((byte, i) => bytes[i] === byte)
  if (begins(0x25, 0x50, 0x44, 0x46, 0x2d)) return 'application/pdf'
  if (begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png'
  if (begins(0xff, 0xd8, 0xff)) return 'image/jpeg'
  return null
}

/** The data sheet of a product as it was kept. */
export async function sheetFile(desk: Desk, input: { productId: string }) {
  const row = await desk.store.read.productSafety.findUnique({
    where: { productId: input.productId },
    include: { sheet: true },
  })
  if (!row?.sheet)
    throw new Refusal('missing', 'productId', input.productId, 'No data sheet is kept for this product yet.')
  return { name: row.sheet.name, type: row.sheet.type, bytes: row.sheet.bytes }
}
