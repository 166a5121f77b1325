/** The shop's own plans for a car, beside those a coating begins. */
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { type Anchor, checkPlan, type PlanKind, visitKey } from '../../domain/upkeep/index.ts'
import { assertFresh } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { planOfVisit } from './acts.ts'
import { stopMessages } from './stopMessages.ts'
import type { VisitView } from './views.ts'
import { upkeepDay, visitViews } from './visits.ts'
import { dueOf } from './workedOut.ts'

export interface PlanInput {
  id?: string | undefined
  version?: number | undefined
  vehicleId: string
  kind: PlanKind
  title: string
  /** RFC 5545. */
  rule: string
  anchor: Anchor
  earlyDays: number
  lateDays: number
}

/** Adds a plan to a car, or changes its name and window; another rule or anchor is another plan. */
export function savePlan(desk: Desk, input: PlanInput): Promise<{ id: string }> {
  const at = desk.now()
  return desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const { zone } = await upkeepDay(tx, at)
    const title = checkText(input.title, 'title', "The plan's name", 80)
    const { vehicleId, kind, rule, anchor, earlyDays, lateDays } = input
    checkPlan({ id: '', kind, title, rule, anchor, earlyDays, lateDays }, zone)
    if (input.id === undefined) {
      if ((await tx.vehicle.count({ where: { id: vehicleId, archivedAt: null } })) === 0)
        refuse('missing', { vehicleId }, 'This car is not on file; look it up again.')
      const { id } = await tx.upkeepPlan.create({
        data: {
          vehicleId,
          kind,
          title,
          rule,
          anchorTo: anchor.to,
          anchorOn: anchor.to === 'date' ? anchor.on : anchor.since,
          anchorEvent: anchor.to === 'date' ? '' : anchor.event,
          earlyDays,
          lateDays,
          createdAt: at,
        },
      })
      audit({
        act: 'plan added',
        entity: 'vehicle',
        entityId: vehicleId,
        detail: { planId: id, title, rule },
      })
      return { id }
    }
    const { id, version = 0 } = input
    const { count } = await tx.upkeepPlan.updateMany({
      where: { id, version, vehicleId },
      data: { title, earlyDays, lateDays, version: { increment: 1 } },
    })
    assertFresh(count, 'plan', id)
    audit({ act: 'plan changed', entity: 'vehicle', entityId: vehicleId, detail: { planId: id, title } })
    return { id }
  })
}

/** Ends a plan; what was done under it stays on file. */
export function archivePlan(desk: Desk, input: { id: string; version: number }): Promise<void> {
  const at = desk.now()
  return desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const { count } = await tx.upkeepPlan.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
    assertFresh(count, 'plan', input.id)
    const row = await tx.upkeepPlan.findUniqueOrThrow({ where: { id: input.id } })
    for (const { ruleOn } of await tx.message.findMany({ where: { planId: input.id }, distinct: ['ruleOn'] }))
      await stopMessages(tx, at, { planId: input.id, ruleOn }, 'The plan was ended.')
    audit({ act: 'plan ended', entity: 'vehicle', entityId: row.vehicleId, detail: { planId: input.id } })
  })
}

/** One visit with everything about it. */
export async function getVisit(desk: Desk, input: { planId: string; ruleOn: string }): Promise<VisitView> {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const kept = await planOfVisit(tx, input.planId)
  const until = Temporal.PlainDate.from(input.ruleOn).add({ years: 1 }).toString()
  const listed = dueOf([kept], { ...day, until }).due.find(visit => visitKey(visit) === visitKey(input))
  if (!listed)
    refuse(
      'missing',
      { ruleOn: input.ruleOn },
      'This visit is over: it was done, skipped or missed. Look at the car.',
    )
  return (await visitViews(tx, day, [kept], [listed]))[0]!
}
