import { say } from '../../domain/language/index.ts'
import { checkCarChecks, checkNote, checkOffers, checkText } from '../../domain/shop/index.ts'
import { toJson, withHelp } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { ListInput, RowAccepted } from '../desk/inputs.ts'
import {
  archiveRow,
  assertNameFree,
  lastPosition,
  orderRows,
  type RowSeen,
  restoreRow,
  rowsShown,
  saveRow,
} from '../desk/keep.ts'
import { comingJobs, handoverLines } from '../floor/comingJobs.ts'
import { keptRecipes, openJobsWith, writeStepDraws } from '../shelf/stepDraws.ts'
import type { TreatmentInput } from './inputs.ts'
import { checkSold, treatmentOf, withSteps } from './treatmentCheck.ts'

export type TreatmentView = Awaited<ReturnType<typeof listTreatments>>[number]

const treatments = (tx: Tx) => ({ table: tx.treatment, entity: 'treatment' })

/** The treatments in their order, each with its steps; archived ones only when asked for. */
export async function listTreatments(desk: Desk, input?: ListInput) {
  const rows = await desk.store.read.treatment.findMany({
    ...rowsShown(input, { position: 'asc' }, { id: 'asc' }),
    include: withSteps,
  })
  return rows.map(({ position: _, ...treatment }) => treatmentOf(treatment))
}

/** Adds a treatment, or changes one with all its steps. Booked jobs keep the steps and prices they were sold with. */
export function saveTreatment(desk: Desk, input: TreatmentInput): Promise<{ id: string }> {
  const { prices } = input
  const steps = input.steps.map((step, position) => ({
    ...step,
    name: step.name.trim(),
    asks: checkOffers(step.asks ?? [], `steps.${position}.asks`),
    position,
  }))
  const data = {
    name: checkText(input.name, 'name', say("The treatment's name")),
    summary: checkNote(input.summary, 'summary', 400),
    prices,
    needsTwoPeople: input.needsTwoPeople ?? false,
    taxKey: input.taxKey ?? '',
    checks: checkCarChecks(input.checks ?? [], 'checks').map(toJson),
  }
  return act(desk, async (tx, audit, at) => {
    await checkSold(tx, { ...data, checks: [], steps })
    await assertNameFree(tx.treatment, { id: input.id, name: data.name }, say('a treatment'))
    const before = await tx.treatmentStep.findMany({
      where: { treatmentId: input.id ?? '' },
      orderBy: { position: 'asc' },
      omit: { id: true, treatmentId: true },
    })
    const added = { position: await lastPosition(tx.treatment) }
    const changed = changesBetween({ steps: before.map(({ draws: _, ...step }) => step) }, { steps })
    const { id } = await saveRow(audit, treatments(tx), input, { data, added, detail: changed })
    await tx.treatmentStep.deleteMany({ where: { treatmentId: id } })
    const recipes = keptRecipes(before, steps)
    await tx.treatmentStep.createMany({
      data: steps.map((step, i) => ({
        ...withHelp(step),
        treatmentId: id,
        draws: recipes[i] as object[],
      })),
    })
    await writeStepDraws(tx, await openJobsWith(tx, [id], at), at)
    return { id }
  })
}

/** Puts a treatment away: it is sold no more. Jobs booked with it stand, and are named first, until it is `accepted`. */
export function archiveTreatment(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const jobs = await comingJobs(tx, at, { treatments: { some: { treatmentId: input.id } } })
    askFirst('in-use', await handoverLines(tx, jobs), {
      field: 'id',
      lead: say('These cars are booked for it. They keep it; nobody else can be sold it:'),
      accepted: input.accepted,
    })
    await archiveRow(audit, treatments(tx), input, { at })
  })
}

/** Sells an archived treatment again, last in the list; refused where it can no longer be carried out as it stands. */
export function restoreTreatment(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, treatments(tx), input, { position: await lastPosition(tx.treatment) })
    const treatment = await tx.treatment.findUniqueOrThrow({ where: { id: input.id }, include: withSteps })
    await assertNameFree(tx.treatment, treatment, say('a treatment'))
    await checkSold(tx, treatmentOf(treatment))
  })
}

/** Puts the treatments in the order given; every one sold once. */
export function orderTreatments(desk: Desk, input: { ids: string[] }): Promise<void> {
  return act(desk, (tx, audit) => orderRows(audit, treatments(tx), input.ids))
}
