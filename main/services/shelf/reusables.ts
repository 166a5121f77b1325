/** Pieces that are washed and used again: their grades, the sets in use, and what becomes of each. */
import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import {
  centiOf,
  checkGrades,
  type Grade,
  planDraw,
  type SetAct,
  setAfter,
  setDue,
} from '../../domain/shelf/index.ts'
import { checkText } from '../../domain/shop/index.ts'
import { fromJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveRow, saveSingle } from '../desk/keep.ts'
import { appendMoves, entryOf } from './append.ts'
import { asField } from './asField.ts'
import { bottlesOf, countedProduct, holdingOfRow, shelfDay } from './countedProducts.ts'
import type { GradesInput, SetActInput, StartSetInput } from './inputs.ts'

export type ReusablesView = Awaited<ReturnType<typeof reusablesOf>>
export type SetView = NonNullable<ReusablesView>['sets'][number]

/** The grades of a product with its sets in use, those due first; null where it is used up. */
export async function reusablesOf(tx: Tx, productId: string) {
  const row = await tx.reusable.findUnique({ where: { productId } })
  if (!row) return null
  const grades = fromJson<Grade[]>(row.grades)
  const sets = await tx.reusableSet.findMany({
    where: { productId, pieces: { gt: 0 } },
    orderBy: { startedOn: 'asc' },
  })
  const views = sets.map(({ productId: _, ...set }) => {
    const grade = Math.min(set.grade, grades.length - 1)
    return {
      ...set,
      gradeName: grades[grade]?.name ?? '',
      /** Washes it is good for in this grade. */
      gradeMost: grades[grade]?.washes ?? 0,
      next: grades[grade + 1]?.name ?? null,
      due: setDue(set, grades),
    }
  })
  return {
    grades,
    version: row.version,
    inUse: sets.reduce((sum, set) => sum + set.pieces, 0),
    sets: views.sort((a, b) => Number(b.due !== null) - Number(a.due !== null)),
  }
}

/** Says that a product is washed and used again, and what for. */
export async function saveGrades(desk: Desk, input: GradesInput): Promise<{ version: number }> {
  const { productId, version } = input
  checkGrades(input.grades)
  const grades = toJson(
    input.grades.map(({ name, washes }, i) => ({
      name: checkText(name, `grades.${i}.name`, say('A use'), 40),
      washes,
    })),
  )
  return act(desk, async (tx, audit) => {
    await countedProduct(tx, productId)
    const kept = { table: tx.reusable, entity: 'stock', noun: 'reuse' }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, { grades })
    return { version: saved.version }
  })
}

/** Pieces leave the shelf and are in use from now on, as one set. */
export function startSet(desk: Desk, { productId, name, amount }: StartSetInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const ground = await shelfDay(tx, at)
    const product = await countedProduct(tx, productId)
    found(
      await tx.reusable.findUnique({ where: { productId } }),
      { productId },
      say('Say first what the pieces are used for.'),
    )
    const called = checkText(name, 'name', say('The set'), 40)
    const holdings = (await bottlesOf(tx, productId)).map(holdingOfRow)
    const plan = await asField('', () =>
      planDraw({
        productId,
        unit: product.unit,
        holdings,
        needCenti: centiOf(amount),
        day: ground.day,
        at,
        by: desk.who,
        stepId: null,
        jobId: null,
        why: say('taken into use: {called}', { called }),
      }),
    )
    await appendMoves(tx, plan.moves.map(entryOf))
    await tx.lot.updateMany({
      where: { id: { in: [...plan.opens] } },
      data: { openedOn: ground.date, lifeAfterOpeningDays: product.lifeAfterOpeningDays },
    })
    const data = { productId, name: called, pieces: amount, startedOn: ground.date }
    return saveRow(audit, keptSets(tx, productId), {}, { data })
  })
}

/** A set was washed, demoted or retired, all of it or some pieces. */
export function changeSet(desk: Desk, { id, version, act: done, reason }: SetActInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    const row = found(
      await tx.reusableSet.findUnique({ where: { id } }),
      { id },
      say('This set is not there any more.'),
    )
    const reuse = await tx.reusable.findUniqueOrThrow({ where: { productId: row.productId } })
    const { id: _, version: __, ...set } = row
    const data = setAfter(set, done as SetAct, fromJson<Grade[]>(reuse.grades))
    const why = done.kind === 'washed' ? {} : { why: checkText(reason, 'reason', say('Why'), 200) }
    const kept = keptSets(tx, row.productId)
    await saveRow(audit, kept, { id, version }, { data, detail: { done: done.kind, ...why } })
  })
}

const keptSets = (tx: Tx, productId: string) => ({
  table: tx.reusableSet,
  entity: 'stock',
  noun: 'set',
  partOf: productId,
})
