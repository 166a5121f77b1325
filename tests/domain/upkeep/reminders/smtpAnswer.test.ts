import { describe, expect, it } from 'vitest'
import { smtpVerdict } from '../../../../main/domain/upkeep/reminders/smtpAnswer.ts'

// RFC 5321 sections 4.2.1 and 4.2.3 (reply codes), RFC 4954 section 6 (535, 454); from memory.
describe('what a server says', () => {
  it.each([
    ['taken', 'after-data', 250, 'accepted'],
    ['mailbox busy', 'envelope', 450, 'deferred'],
    ['no such mailbox', 'envelope', 550, 'refused'],
    ['refused as spam after the text', 'after-data', 554, 'refused'],
    ['no room just now', 'after-data', 452, 'deferred'],
    ['closing down', 'connect', 421, 'deferred'],
    ['no service here', 'connect', 554, 'put-back'],
    ['wrong password', 'login', 535, 'put-back'],
    ['login not just now', 'login', 454, 'deferred'],
    ['TLS asked for and not to be had', 'tls', null, 'put-back'],
    ['nobody there', 'connect', null, 'deferred'],
    ['gone during the envelope', 'envelope', null, 'deferred'],
    ['gone during the text', 'data', null, 'deferred'],
    ['gone after the text', 'after-data', null, 'unanswered'],
  ] as const)('%s', (_, stage, reply, verdict) => {
    expect(smtpVerdict(stage, reply)).toBe(verdict)
  })
})
