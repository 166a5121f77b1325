/** A car's life with the shop, and what is proposed for it. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { acceptProposal, ruleWords } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { vehicleWords } from '../floor/jobRows.ts'
import { type ActView, upkeepAct } from './acts.ts'
import { ownersOf } from './changeHands.ts'
import { exposureOf } from './exposure.ts'
import type { ProposalInput } from './inputs.ts'
import { carTimes, type KeptVisitPlan, keptPlans } from './kept.ts'
import { layersOf } from './layers.ts'
import { carLife } from './lifeOf.ts'
import { upkeepRules } from './settings.ts'
import { timelineOf } from './timeline.ts'
import { type UpkeepDay, upkeepDay, visitViews } from './visits.ts'
import { nextOf } from './workedOut.ts'

export type CarView = Awaited<ReturnType<typeof carUpkeep>>
export type ProposalView = CarView['proposals'][number]
export type PlanView = Awaited<ReturnType<typeof planViews>>[number]

/** Everything upkeep knows of a car. */
export async function carUpkeep(desk: Desk, input: { vehicleId: string }) {
  const tx = desk.store.read
  const { vehicleId } = input
  const vehicle = await tx.vehicle.findUnique({ where: { id: vehicleId }, include: { customer: true } })
  if (!vehicle) refuse('missing', { vehicleId }, say('This car is not on file; look it up again.'))
  const day = await upkeepDay(tx, desk.now())
  const rules = await upkeepRules(tx)
  const { choices, version } = await exposureOf(tx, vehicleId)
  const { kept, layers, life } = await lifeWith(tx, vehicleId, day)
  const { soldOn } = await carTimes(tx, vehicleId)
  const away = await tx.upkeepEntry.findMany({
    where: { vehicleId, what: 'away', voidedAt: null },
    orderBy: { onDay: 'asc' },
  })
  return {
    vehicleId,
    plate: vehicle.plate,
    vehicleWords: vehicleWords(vehicle),
    customerId: vehicle.customerId,
    customerName: vehicle.customer.name,
    today: day.today,
    soldOn,
    version: vehicle.version,
    owners: await ownersOf(tx, vehicleId),
    away: away.map(({ actId, onDay, toDay, why }) => ({ actId, from: onDay ?? '', to: toDay ?? '', why })),
    timeline: await timelineOf(tx, vehicleId, day.zone, layers),
    layers,
    plans: await planViews(tx, day, kept),
    exposure: {
      factors: rules.factors.map(factor => ({ ...factor, chosen: choices[factor.id] ?? null })),
      version,
    },
    ...life,
    /** As `upkeep.acceptProposal` takes them back. */
    proposals: life.proposals.map(({ planId, what, fromOn, toOn, sentence, why }) => ({
      planId,
      what,
      fromOn,
      toOn,
      sentence,
      why,
    })),
  }
}

async function lifeWith(tx: Tx, vehicleId: string, day: UpkeepDay) {
  const kept = await keptPlans(tx, { vehicleId })
  const layers = await layersOf(tx, vehicleId, day.today)
  const { choices: exposure } = await exposureOf(tx, vehicleId)
  const life = await carLife(tx, await upkeepRules(tx), day, { layers, exposure, kept })
  return { kept, layers, life }
}

async function planViews(tx: Tx, day: UpkeepDay, kept: readonly KeptVisitPlan[]) {
  const names = new Map((await tx.product.findMany()).map(product => [product.id, product.name]))
  const found = kept.map(each => ({ each, next: nextOf(each, day) }))
  const due = found.flatMap(({ next }) => (next.dueOn === null ? [] : [{ ...next, projected: false }]))
  const visits = new Map((await visitViews(tx, day, kept, due)).map(visit => [visit.planId, visit]))
  return found.map(({ each: { row, plan }, next }) => ({
    id: row.id,
    version: row.version,
    kind: plan.kind,
    title: plan.title,
    rule: plan.rule,
    ruleWords: ruleWords(plan.rule),
    earlyDays: plan.earlyDays,
    lateDays: plan.lateDays,
    productName: row.productId === null ? null : (names.get(row.productId) ?? null),
    /** Its next visit; null: none follows, and `sentence` says why. */
    next: visits.get(row.id) ?? null,
    sentence: next.sentence,
  }))
}

/**
 * Makes a proposal so: nothing moves a due day but this. Refused where what was seen since proposes otherwise.
 */
export function acceptCarProposal(desk: Desk, input: ProposalInput): Promise<ActView> {
  return upkeepAct(desk, async ({ tx, day }) => {
    const row = await tx.upkeepPlan.findUnique({ where: { id: input.planId } })
    const { kept, life } = await lifeWith(tx, row?.vehicleId ?? '', day)
    const proposal = life.proposals.find(
      each => each.planId === input.planId && each.what === input.what && each.toOn === input.toOn,
    )
    const plan = kept.find(each => each.row.id === input.planId)
    if (!proposal || !plan)
      refuse(
        'stale',
        { toOn: input.toOn },
        say('This is not proposed any more: something was entered meanwhile. Look at the car again.'),
      )
    const { vehicleId, id: planId } = plan.row
    const accepted = acceptProposal(plan.plan, plan.records, proposal)
    // What the proposal adds to the plan's records: the visit on another day.
    const moved = accepted.records.slice(plan.records.length).flatMap(record =>
      record.what === 'moved'
        ? [
            {
              vehicleId,
              planId,
              what: 'moved' as const,
              ruleOn: record.dueOn,
              toDay: record.to,
              why: record.why ?? '',
            },
          ]
        : [],
    )
    const rule =
      proposal.what === 'interval'
        ? [
            {
              vehicleId,
              planId,
              what: 'rule' as const,
              rule: accepted.plan.rule,
              why: say('every {days} days', { days: proposal.days }),
            },
          ]
        : []
    return { words: proposal.sentence, entries: [...rule, ...moved] }
  })
}
