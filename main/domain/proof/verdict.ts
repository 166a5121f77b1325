import { word } from '../language/index.ts'

/** What may be said of a certificate, in the order of what is doubted first. */

type Verdict =
  | 'agrees'
  | 'agrees-but-corrected'
  | 'unknown-key'
  | 'forged'
  | 'no-record'
  | 'record-changed'
  | 'paper-changed'

interface Findings {
  /** The shop has the key the code names. */
  keyKnown: boolean
  /** The signature is that key's, on this reference and digest. */
  signatureRight: boolean
  /** Digest of the record's own statement; null: there is no such record. */
  recordDigest: string | null
  /** Digest of what the certificate states; null: only its code was read. */
  paperDigest: string | null
  /** The digest in the code. */
  signedDigest: string
  /** A later page corrects this one. */
  corrected: boolean
}

/** Yes only where key, signature, record and what was read of the paper all agree. */
export function verdictOf(found: Findings): Verdict {
  if (!found.keyKnown) return 'unknown-key'
  if (!found.signatureRight) return 'forged'
  if (found.paperDigest !== null && found.paperDigest !== found.signedDigest) return 'paper-changed'
  if (found.recordDigest === null) return 'no-record'
  if (found.recordDigest !== found.signedDigest) return 'record-changed'
  return found.corrected ? 'agrees-but-corrected' : 'agrees'
}

export const verdictWords: Record<Verdict, string> = {
  agrees: word('Yes: the certificate and the record agree.'),
  'agrees-but-corrected': word(
    'It was signed here as it is, but a later page corrects it. Ask for the newer certificate.',
  ),
  'unknown-key': word('No: it was not signed with a key of this shop.'),
  forged: word('No: the signature is not right. The code was made up, changed or misread.'),
  'no-record': word('The signature is this shop’s, but the record is not here: it may be in a newer backup.'),
  'record-changed': word('No: the record here says something else than what was signed.'),
  'paper-changed': word('No: the certificate says something else than what was signed.'),
}

/** Whether it may be shown as a yes. */
export const isYes = (verdict: Verdict) => verdict === 'agrees'
