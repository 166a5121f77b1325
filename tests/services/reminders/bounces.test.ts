import { describe, expect, it } from 'vitest'
import { importBounce } from '../../../main/services/reminders/bounces.ts'
import { refuseMessage, retryMessage } from '../../../main/services/reminders/messageActs.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { oneApproved, says } from './mailDesk.ts'
import { message } from './reminderDesk.ts'

describe('a message', () => {
  it('that was refused while it waits for its next try is not tried again', async () => {
    const { desk, id } = await oneApproved({ onRcptTo: (_, __, done) => done(says(451)) })
    await runOutbox(desk)
    await refuseMessage(desk, await message(desk, id))
    desk.setNow('2026-04-15T15:00:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 0, waiting: 0 })
  })

  it('that came back is marked by its id from a pasted report, and its address is left alone', async () => {
    const { desk, id } = await oneApproved()
    await runOutbox(desk)
    const { mailId } = await desk.store.read.message.findFirstOrThrow()
    // RFC 3464 section 2.3: fields per recipient; the example's shape is that of its appendix E.1 (from memory).
    const report = [
      'Message-ID: <report-1@mail.example.com>',
      'Content-Type: multipart/report; report-type=delivery-status',
      '',
      'Reporting-MTA: dns; mail.example.com',
      '',
      'Final-Recipient: rfc822; owner@example.com',
      'Action: failed',
      'Status: 5.1.1',
      'Diagnostic-Code: smtp; 550 5.1.1 no such user',
      '',
      `Message-ID: ${mailId}`,
      'Subject: whatever',
    ].join('\r\n')
    expect(await importBounce(desk, { text: report })).toMatchObject({
      found: [{ address: 'owner@example.com', status: '5.1.1', permanent: true, messageId: mailId }],
    })
    const failed = await message(desk, id)
    expect(failed).toMatchObject({ state: 'failed', failure: { code: 'bounced' } })
    await expect(retryMessage(desk, failed)).rejects.toMatchObject({ code: 'address-bounced' })
    await expect(importBounce(desk, { text: 'hello' })).rejects.toMatchObject({ code: 'no-report' })
  })
})
