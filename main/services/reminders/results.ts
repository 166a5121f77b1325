import { type Channel, reminderResults } from '../../domain/upkeep/index.ts'
import { remindedCounts } from '../../store/resultRows.ts'
import type { Desk } from '../desk/desk.ts'
import { templatesOf } from './templates.ts'

const confidence = 0.95

/** How many owners that were reminded booked and came, by channel and template, with what so few can tell. */
export async function resultsSummary(desk: Desk, input: { fromAt?: number | undefined } = {}) {
  const tx = desk.store.read
  const counts = await remindedCounts<Channel>(tx, input.fromAt ?? null)
  const names = new Map((await templatesOf(tx)).map(each => [each.id, each.name]))
  return {
    lines: reminderResults(counts, confidence).map(line => ({
      ...line,
      templateName: names.get(line.templateId) ?? line.templateId,
    })),
    confidence,
  }
}
