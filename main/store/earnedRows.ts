/** Finished visits as what they earned is reckoned from. A shop of years has thousands: each comes as one text. */
import type { Tx } from './store.ts'

export interface EarnedRow {
  id: string
  arrivedAt: number | null
  dropOffAt: number
  leftAt: number | null
  handoverAt: number
  taxExempt: string
  taxReversed: boolean
  treatments: { treatmentId: string; name: string; priceMinor: number; treatment: { taxKey: string } }[]
  charges: {
    kind: string
    treatmentId: string | null
    words: string
    quantity: string
    amountMinor: number
    taxKey: string
  }[]
  steps: {
    kind: string
    startAt: number
    endAt: number
    actualStartAt: number | null
    actualEndAt: number | null
    /** Who worked on it, without those who only helped. */
    crew: string[]
  }[]
}

/**
 * The visits handed over from a minute on, and before another one where it is given. SQLite by itself would go through
 * all that were ever handed over.
 */
export async function earnedRows(tx: Tx, fromAt: number, toAt: number | undefined): Promise<EarnedRow[]> {
  const rows = await tx.$queryRaw<{ text: string }[]>`
    select json_object(
      'id', j.id, 'arrivedAt', j.arrivedAt, 'dropOffAt', j.dropOffAt, 'leftAt', j.leftAt,
      'handoverAt', j.handoverAt, 'taxExempt', j.taxExempt,
      'taxReversed', json(case when j.taxReversed then 'true' else 'false' end),
      'treatments', json((select json_group_array(json_object('treatmentId', s.treatmentId, 'name', s.name,
          'priceMinor', s.priceMinor, 'treatment', json_object('taxKey', t.taxKey)))
        from (select * from JobTreatment where jobId = j.id order by position) s
        join Treatment t on t.id = s.treatmentId)),
      'charges', json((select json_group_array(json_object('kind', kind, 'treatmentId', treatmentId,
          'words', words, 'quantity', quantity, 'amountMinor', amountMinor, 'taxKey', taxKey))
        from (select * from JobCharge where jobId = j.id order by position))),
      'steps', json((select json_group_array(json_object('kind', kind, 'startAt', startAt, 'endAt', endAt,
          'actualStartAt', actualStartAt, 'actualEndAt', actualEndAt,
          'crew', json((select json_group_array(m.name) from JobStepCrew c join CrewMember m on m.id = c.crewId
            where c.stepId = s.id and not c.helps))))
        from JobStep s where s.jobId = j.id))
    ) as text
    from Job j indexed by Job_leftAt_idx
    where j.status = 'handedOver' and j.leftAt >= ${fromAt} and j.leftAt < ${toAt ?? Number.MAX_SAFE_INTEGER}`
  return rows.map(row => JSON.parse(row.text) as EarnedRow)
}
