/** The shop's own plans for a car, beside those a coating begins. */
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { checkPlan, visitKey } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { archiveRow, type RowSeen, saveRow } from '../desk/keep.ts'
import { planOfVisit } from './acts.ts'
import type { PlanInput, VisitKey } from './inputs.ts'
import { stopMessages } from './stopMessages.ts'
import { upkeepDay, type VisitView, visitViews } from './visits.ts'
import { dueOf } from './workedOut.ts'

/** Adds a plan to a car, or changes its name and window; another rule or anchor is another plan. */
export function savePlan(desk: Desk, input: PlanInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const { zone } = await upkeepDay(tx, at)
    const title = checkText(input.title, 'title', say("The plan's name"), 80)
    const { vehicleId, kind, rule, anchor, earlyDays, lateDays } = input
    checkPlan({ id: '', kind, title, rule, anchor, earlyDays, lateDays }, zone)
    if (input.id === undefined) await assertInUse(tx, vehicleId)
    const { id } = await saveRow(audit, keptAs(tx, vehicleId), input, {
      data: { title, earlyDays, lateDays },
      added: {
        vehicleId,
        kind,
        rule,
        anchorTo: anchor.to,
        anchorOn: anchor.to === 'date' ? anchor.on : anchor.since,
        anchorEvent: anchor.to === 'date' ? '' : anchor.event,
        createdAt: at,
      },
    })
    return { id }
  })
}

/** Ends a plan; what was done under it stays on file. */
export function archivePlan(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const plan = await tx.upkeepPlan.findUnique({ where: { id: input.id }, select: { vehicleId: true } })
    await archiveRow(audit, keptAs(tx, plan?.vehicleId ?? ''), input, { at })
    await stopMessages(tx, at, { planId: input.id }, say('The plan was ended.'))
  })
}

/** Plans are filed under their car. */
function keptAs(tx: Tx, vehicleId: string) {
  return { table: tx.upkeepPlan, entity: 'vehicle', noun: 'plan', partOf: vehicleId }
}

async function assertInUse(tx: Tx, vehicleId: string): Promise<void> {
  if ((await tx.vehicle.count({ where: { id: vehicleId, archivedAt: null } })) === 0)
    refuse('missing', { vehicleId }, say('This car is not on file; look it up again.'))
}

/** One visit with everything about it. */
export async function getVisit(desk: Desk, input: VisitKey): Promise<VisitView> {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const kept = await planOfVisit(tx, input.planId)
  const until = Temporal.PlainDate.from(input.ruleOn).add({ years: 1 }).toString()
  const listed = dueOf([kept], { ...day, until }).due.find(visit => visitKey(visit) === visitKey(input))
  if (!listed)
    refuse(
      'missing',
      { ruleOn: input.ruleOn },
      say('This visit is over: it was done, skipped or missed. Look at the car.'),
    )
  const [view] = await visitViews(tx, day, [kept], [listed])
  return found(view, { planId: input.planId }, say('This car is not on file; look it up again.'))
}
