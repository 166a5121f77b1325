/** The safety records of products: what was read off each data sheet, and the sheet itself as a file. */

import { createHash } from 'node:crypto'
import { checkDate } from '../../domain/calendar/index.ts'
import {
  hazardStatement,
  normaliseCode,
  precautionaryStatement,
  readUnNumber,
  sheetTypeOf,
  storageGroups,
} from '../../domain/hazard/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { noJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shelfDay } from './countedProducts.ts'
import type { SafetyFields, SafetyInput, SheetInput } from './safetyInputs.ts'
import { fieldsOf, type SafetyView, safetyView, withSafety } from './safetyView.ts'
import { rulesOf } from './shelfRules.ts'

/** One product's safety record; silent on everything where nobody has entered any. */
export async function getSafety(desk: Desk, input: { productId: string }): Promise<SafetyView> {
  return safetyOf(desk.store.read, input.productId)
}

export async function safetyOf(tx: Tx, productId: string): Promise<SafetyView> {
  const row = await tx.product.findUnique({ where: { id: productId }, include: withSafety })
  if (!row) refuse('missing', { productId }, say('This product is not there.'))
  return safetyView(row, (await rulesOf(tx)).regimeUsed)
}

/** Enters what was read off a data sheet. Codes are kept in one spelling; those the lists do not hold are refused. */
export function saveSafety(desk: Desk, input: SafetyInput): Promise<SafetyView> {
  return act(desk, async (tx, audit) => {
    const { productId, version = 0 } = input
    const data = checkedFields(input, (await shelfDay(tx, desk.now())).date)
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

/** No sheet is older than the rules that brought them in (directive 91/155/EEC, from memory). */
const firstSheets = '1991-01-01'

function checkRevision(revisedOn: string, today: string): void {
  checkDate(revisedOn, 'revisedOn')
  if (revisedOn < firstSheets || revisedOn > today)
    refuse(
      'revision-bad',
      { revisedOn },
      revisedOn > today
        ? say('{revisedOn} is still to come: give the date of revision that is printed on the sheet.', {
            revisedOn,
          })
        : say(
            '{revisedOn} is before there were data sheets: give the date of revision that is printed on it.',
            { revisedOn },
          ),
    )
}

function checkedFields(input: SafetyInput, today: string): SafetyFields {
  const { revisedOn, hazardCodes, precautionaryCodes, protection, storageGroup, unNumber, ph } = input
  if (revisedOn !== null) checkRevision(revisedOn, today)
  hazardCodes?.forEach((code, i) => {
    hazardStatement(code, 'eu-clp', `hazardCodes.${i}`)
  })
  precautionaryCodes?.forEach((code, i) => {
    precautionaryStatement(code, 'eu-clp', `precautionaryCodes.${i}`)
  })
  if (storageGroup !== null && !storageGroups.includes(storageGroup))
    refuse('storage-group-unknown', { storageGroup }, say('Choose one of the storage groups.'))
  if (ph !== null && !(ph >= 0 && ph <= 14))
    refuse('ph-bad', { ph }, say('A pH of {ph} cannot be; it lies between 0 and 14.', { ph }))
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
    assertFresh(count, word('safety record'), productId)
    return
  }
  if ((await tx.product.count({ where: { id: productId } })) === 0)
    refuse('missing', { productId }, say('This product is not there.'))
  await tx.productSafety.create({ data: { productId } })
  await tx.productSafety.updateMany({ where: { productId }, data })
}

/**
 * Keeps a data sheet as a file, with the date of its revision. What it is is read off its first bytes, not believed;
 * the sheets before it stay in the database.
 */
export async function uploadSheet(desk: Desk, input: SheetInput): Promise<SafetyView> {
  const { productId, bytes, revisedOn } = input
  const type = sheetTypeOf(bytes, input.fileName)
  return act(desk, async (tx, audit) => {
    checkRevision(revisedOn, (await shelfDay(tx, desk.now())).date)
    const file = await tx.storedFile.create({
      data: {
        name: checkNote(input.fileName.replaceAll(/[/\\]/g, ' '), 'fileName', 120) || say('data sheet'),
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

/** The data sheet of a product as it was kept. */
export async function sheetFile(desk: Desk, input: { productId: string }) {
  const row = await desk.store.read.productSafety.findUnique({
    where: { productId: input.productId },
    include: { sheet: true },
  })
  if (!row?.sheet)
    refuse('missing', { productId: input.productId }, say('No data sheet is kept for this product yet.'))
  return { name: row.sheet.name, type: row.sheet.type, bytes: row.sheet.bytes }
}
