/** Where a delivery stood when its answer came, or did not. */
export type SmtpStage = 'connect' | 'tls' | 'login' | 'envelope' | 'data' | 'after-data'

export type SmtpVerdict = 'accepted' | 'refused' | 'deferred' | 'unanswered' | 'put-back'

/**
 * What an SMTP answer means for a message. Reply codes: 2yz taken, 4yz later, 5yz never (RFC 5321 section 4.2.1). A
 * refusal before the envelope (no service, no TLS, wrong password) is about the shop's settings, not the message. No reply at all
 * means it never left, unless the text had been handed over: then it may have arrived.
 */
export function smtpVerdict(stage: SmtpStage, reply: number | null): SmtpVerdict {
  if (stage === 'tls' || stage === 'login') return reply !== null && reply < 500 ? 'deferred' : 'put-back'
  if (reply === null) return stage === 'after-data' ? 'unanswered' : 'deferred'
  if (reply >= 200 && reply < 300) return stage === 'after-data' ? 'accepted' : 'deferred'
  if (reply >= 500 && reply < 600) return stage === 'connect' ? 'put-back' : 'refused'
  return 'deferred'
}
