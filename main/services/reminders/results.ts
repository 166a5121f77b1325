import { type Channel, type RemindedVisit, reminderResults, visitKey } from '../../domain/upkeep/index.ts'
import type { Desk } from '../desk/desk.ts'
import { templatesOf } from './templates.ts'

const confidence = 0.95

/** How many owners that were reminded booked and came, by channel and template, with what so few can tell. */
export async function resultsSummary(desk: Desk, input: { fromAt?: number | undefined } = {}) {
  const tx = desk.store.read
  const rows = await tx.message.findMany({
    where: { sentAt: { not: null, ...(input.fromAt !== undefined && { gte: input.fromAt }) } },
    orderBy: [{ tryNo: 'asc' }, { id: 'asc' }],
  })
  const booked = await tx.upkeepEntry.findMany({
    where: { what: 'booked', voidedAt: null },
    include: { job: { select: { status: true } } },
  })
  const came = new Map<string, boolean>()
  for (const { planId, ruleOn, job } of booked)
    if (planId !== null && ruleOn !== null && job && ['booked', 'inShop', 'handedOver'].includes(job.status))
      came.set(visitKey({ planId, ruleOn }), job.status !== 'booked')
  // The last reminder of a visit is the one that is said to have brought it.
  const visits = new Map<string, RemindedVisit>()
  for (const { planId, ruleOn, channel, templateId } of rows) {
    const key = visitKey({ planId, ruleOn })
    visits.set(key, {
      channel: channel as Channel,
      templateId,
      booked: came.has(key),
      came: came.get(key) ?? false,
    })
  }
  const names = new Map((await templatesOf(tx)).map(each => [each.id, each.name]))
  return {
    lines: reminderResults([...visits.values()], confidence).map(line => ({
      ...line,
      templateName: names.get(line.templateId) ?? line.templateId,
    })),
    confidence,
  }
}
