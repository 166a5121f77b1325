/**
 * What a certificate's code says: which record, the digest of what it states, and a signature on both. Nothing of the
 * owner or the car stands in it. Everything binary is base64url, unpadded (RFC 4648, section 5).
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export interface ProofCode {
  /** The job's number and the page's: `212-1`. */
  reference: string
  /** SHA-256 of the statement (FIPS 180-4), 32 bytes. */
  digest: string
  /** Ed25519 (RFC 8032), 64 bytes. */
  signature: string
  /** Which key signed it: the first 8 characters of the digest of the public key. */
  key: string
}

const form = /^LUSTRUM1\.(\d{1,9}-\d{1,4})\.([\w-]{43})\.([\w-]{86})\.([\w-]{8})$/

/** The code as it stands in a QR code or is typed. */
export function codeText({ reference, digest, signature, key }: ProofCode): string {
  return `LUSTRUM1.${reference}.${digest}.${signature}.${key}`
}

/**
 * Reads a code; blanks and line ends that came in between are dropped.
 * @throws Refusal `code-unread` where it is none, or a part of it is missing.
 */
export function readCode(text: string, field = 'code'): ProofCode {
  const parts = form.exec(text.replaceAll(/\s+/g, ''))
  if (!parts)
    refuse(
      'code-unread',
      { [field]: text.slice(0, 40) },
      say('This is no code of a certificate, or a part of it is missing: scan it again, or choose the file.'),
    )
  const [, reference, digest, signature, key] = parts as unknown as [string, string, string, string, string]
  return { reference, digest, signature, key }
}

/** What is signed: the words before it keep the signature from standing for anything else. */
export function signedText({ reference, digest }: Pick<ProofCode, 'reference' | 'digest'>): string {
  return `Lustrum applied record, form 1\n${reference}\n${digest}\n`
}
