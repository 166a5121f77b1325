import Database from 'better-sqlite3'
import { expect, it, onTestFinished } from 'vitest'
import { openTestStore } from './openDatabase.ts'

/** What ten years pile up and the screens ask of all day, each by the index that leads to the few rows it is about. */
const asked: [string, string, string][] = [
  [
    'messages that went out today',
    `select * from Message where state = 'sent' and sentAt >= 5 order by createdAt, id limit 201`,
    'USING INDEX Message_state_sentAt_idx (state=? AND sentAt>?)',
  ],
  [
    'messages that wait',
    `select * from Message where state = 'approved' and channel = 'email' order by createdAt, id`,
    'USING INDEX Message_state_createdAt_idx (state=?)',
  ],
  [
    'the message an address sent back',
    `select * from Message where address in ('a', 'b') and channel = 'email' order by sentAt desc`,
    'USING INDEX Message_address_idx (address=?)',
  ],
  [
    'what all jobs were charged',
    `select jobId, sum(case kind when 'invoice' then withTaxMinor else -withTaxMinor end) from Invoice group by jobId`,
    'USING COVERING INDEX Invoice_jobId_kind_withTaxMinor_idx',
  ],
  [
    'what was paid for a job',
    `select sum(amountMinor) from Payment where jobId = 'a'`,
    'USING COVERING INDEX Payment_jobId_amountMinor_idx (jobId=?)',
  ],
  [
    'visits handed over in a month',
    `select * from Job indexed by Job_leftAt_idx where status = 'handedOver' and leftAt >= 5 and leftAt < 9`,
    'USING INDEX Job_leftAt_idx (leftAt>? AND leftAt<?)',
  ],
  [
    // With an index that begins with the status too, SQLite went through every visit ever handed over.
    "a car's visits",
    `select * from Job where vehicleId = 'a' and status = 'handedOver'`,
    'USING INDEX Job_vehicleId_idx (vehicleId=?)',
  ],
  [
    'open visits of half a year',
    `select planId, kind, ruleOn, dueOn, firstOn, lastOn from PlanDue
      where inUse = 1 and dueOn >= '2026-04-15' and dueOn <= '2026-10-12' order by dueOn, planId`,
    'USING COVERING INDEX PlanDue_inUse_dueOn_planId_lastOn_firstOn_kind_ruleOn_idx (inUse=? AND dueOn>? AND dueOn<?)',
  ],
  [
    "a plan's title",
    `select title from UpkeepPlan indexed by UpkeepPlan_id_title_idx where id = 'a'`,
    'USING COVERING INDEX UpkeepPlan_id_title_idx (id=?)',
  ],
]

it.each(asked)('finds %s by its index', async (_what, sql, index) => {
  const { file } = await openTestStore()
  const database = new Database(file, { readonly: true })
  onTestFinished(() => void database.close())
  const steps = database.prepare(`explain query plan ${sql}`).all() as { detail: string }[]
  expect(steps.map(({ detail }) => detail).join('\n')).toContain(index)
})
