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
]

it.each(asked)('finds %s by its index', async (_what, sql, index) => {
  const { file } = await openTestStore()
  const database = new Database(file, { readonly: true })
  onTestFinished(() => void database.close())
  const steps = database.prepare(`explain query plan ${sql}`).all() as { detail: string }[]
  expect(steps.map(({ detail }) => detail).join('\n')).toContain(index)
})
