/** The shop's own rules for what is left after the work, beside what everybody is to beware of. */
import { WASTE_STREAMS, wasteNoteOf } from '../../domain/hazard/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import type { WasteRuleInput } from './inputs.ts'

export type WasteRuleView = Awaited<ReturnType<typeof wasteRules>>[number]

/** Every stream with its caution and the shop's rule; empty where the shop has not written one. */
export async function wasteRules(desk: Desk) {
  const rows = new Map((await desk.store.read.wasteRule.findMany()).map(row => [row.stream, row]))
  return WASTE_STREAMS.map(stream => ({
    stream,
    ...wasteNoteOf(stream),
    rule: rows.get(stream)?.rule ?? '',
    version: rows.get(stream)?.version ?? 0,
  }))
}

/** Writes the shop's rule for a stream; an empty one takes it out. */
export function saveWasteRule(desk: Desk, { stream, version, rule }: WasteRuleInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    const kept = { table: tx.wasteRule, entity: 'waste rule' }
    await saveSingle(audit, kept, { key: { stream }, version }, { rule: checkNote(rule, 'rule', 600) })
  })
}
