import {
  checkNote,
  checkText,
  checkUnique,
  type SizeClass,
  type TreatmentStep,
} from '../../domain/shop/index.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { checkOrder } from '../desk/order.ts'
import { keptRecipes, openJobsWith, writeStepDraws } from '../shelf/stepDraws.ts'
import { checkSold } from './treatmentCheck.ts'

export interface TreatmentView {
  id: string
  name: string
  summary: string
  /** Minor units by size; 0: not priced. */
  prices: Record<SizeClass, number>
  steps: TreatmentStep[]
  archivedAt: number | null
  version: number
}

/** The treatments in their order, each with its steps; archived ones only when asked for. */
export async function listTreatments(
  desk: Desk,
  input?: { archived?: boolean | undefined },
): Promise<TreatmentView[]> {
  const rows = await desk.store.read.treatment.findMany({
    where: input?.archived ? {} : { archivedAt: null },
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { position: 'asc' }, { id: 'asc' }],
    include: { steps: { orderBy: { position: 'asc' } } },
  })
  return rows.map(({ position: _, ...treatment }) => ({
    ...treatment,
    prices: treatment.prices as Record<SizeClass, number>,
    steps: treatment.steps.map(
      ({ id: _, treatmentId: __, position: ___, draws: ____, ...step }) => step as unknown as TreatmentStep,
    ),
  }))
}

export interface TreatmentInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  summary: string
  prices: Record<SizeClass, number>
  steps: TreatmentStep[]
}

/** Adds a treatment, or changes one with all its steps. Booked jobs keep the steps and prices they were sold with. */
export async function saveTreatment(desk: Desk, input: TreatmentInput): Promise<{ id: string }> {
  const { prices } = input
  const steps = input.steps.map((step, position) => ({ ...step, name: step.name.trim(), position }))
  const data = {
    name: checkText(input.name, 'name', "The treatment's name"),
    summary: checkNote(input.summary, 'summary', 400),
    prices,
  }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    await checkSold(tx, input)
    const others = await tx.treatment.findMany({ where: { archivedAt: null, NOT: { id: input.id ?? '' } } })
    checkUnique([...others.map(each => each.name), data.name], () => 'name', 'a treatment')
    if (input.id === undefined) {
      const position = (await tx.treatment.aggregate({ _max: { position: true } }))._max.position ?? -1
      const { id } = await tx.treatment.create({
        data: { ...data, position: position + 1, steps: { createMany: { data: steps } } },
      })
      audit({ act: 'added', entity: 'treatment', entityId: id, detail: { ...data, steps } })
      return { id }
    }
    const { id } = input
    const before = await tx.treatment.findUnique({
      where: { id },
      include: { steps: { orderBy: { position: 'asc' }, omit: { id: true, treatmentId: true } } },
    })
    const { count } = await tx.treatment.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'treatment', id)
    await tx.treatmentStep.deleteMany({ where: { treatmentId: id } })
    const recipes = keptRecipes(before!.steps, steps)
    await tx.treatmentStep.createMany({
      data: steps.map((step, i) => ({ ...step, treatmentId: id, draws: recipes[i] as object[] })),
    })
    await writeStepDraws(tx, await openJobsWith(tx, [id], desk.now()), desk.now())
    audit({
      act: 'changed',
      entity: 'treatment',
      entityId: id,
      detail: changesBetween(
        { ...before, steps: before!.steps.map(({ draws: _, ...step }) => step) },
        { ...data, steps },
      ),
    })
    return { id }
  })
}

/** Puts a treatment away: it is sold no more; jobs booked with it stand. */
export async function archiveTreatment(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { count } = await tx.treatment.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'treatment', input.id)
    audit({ act: 'archived', entity: 'treatment', entityId: input.id })
  })
}

/** Sells an archived treatment again, last in the list; refused where it can no longer be carried out as it stands. */
export async function restoreTreatment(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const all = await tx.treatment.findMany({ include: { steps: { orderBy: { position: 'asc' } } } })
    const treatment = all.find(each => each.id === input.id)
    if (treatment) {
      const sold = all.filter(each => each.archivedAt === null)
      checkUnique([...sold.map(each => each.name), treatment.name], () => 'name', 'a treatment')
      await checkSold(tx, treatment as unknown as TreatmentInput)
    }
    const { count } = await tx.treatment.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: {
        archivedAt: null,
        position: Math.max(-1, ...all.map(each => each.position)) + 1,
        version: { increment: 1 },
      },
    })
    assertFresh(count, 'treatment', input.id)
    audit({ act: 'restored', entity: 'treatment', entityId: input.id })
  })
}

/** Puts the treatments in the order given; every one sold once. */
export async function orderTreatments(desk: Desk, input: { ids: string[] }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const sold = await tx.treatment.findMany({ where: { archivedAt: null }, select: { id: true } })
    checkOrder(
      input.ids,
      sold.map(treatment => treatment.id),
    )
    for (const [position, id] of input.ids.entries())
      await tx.treatment.update({ where: { id }, data: { position } })
    audit({ act: 'ordered', entity: 'treatment', entityId: '', detail: { ids: input.ids } })
  })
}
