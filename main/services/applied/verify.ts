import { say } from '../../domain/language/index.ts'
import {
  isYes,
  readCode,
  readStatement,
  type StatementSection,
  signedText,
  statementText,
  verdictOf,
  verdictWords,
} from '../../domain/proof/index.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { digestOf, pageNamed, statementOf } from './certify.ts'
import type { VerifyInput } from './inputs.ts'

export interface VerifyView {
  yes: boolean
  words: string
  reference: string
  /** What the record states, to be held against the paper; null where there is none or nothing is proven. */
  sections: StatementSection[] | null
}

/** Whether a certificate, by its code and what it states where that was read, agrees with the record. */
export async function verifyCertificate(desk: Desk, input: VerifyInput): Promise<VerifyView> {
  const code = readCode(input.code)
  const { signer, read } = desk.store
  const page = await pageNamed(read, code.reference)
  const sections = page && statementOf(page, (await shopOf(read)).zone)
  const signatureRight = signer.verify(signedText(code), code.signature, code.key)
  const verdict = verdictOf({
    keyKnown: signer.has(code.key),
    signatureRight,
    recordDigest: sections && digestOf(statementText(sections)),
    paperDigest: input.statement === null ? null : digestOf(readStatement(input.statement)),
    signedDigest: code.digest,
    corrected: page !== null && page.correctedBy !== null,
  })
  return {
    yes: isYes(verdict),
    words: say(verdictWords[verdict]),
    reference: code.reference,
    sections: signatureRight ? sections : null,
  }
}
