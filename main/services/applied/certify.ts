/** What a signed page states for good, and the code that proves it. */

import { createHash } from 'node:crypto'
import { say } from '../../domain/language/index.ts'
import { codeText, type StatementSection, signedText, statementText } from '../../domain/proof/index.ts'
import { found } from '../../domain/refusal.ts'
import { fromJson } from '../../store/json.ts'
import type { Signer } from '../../store/signingKey.ts'
import type { Tx } from '../../store/store.ts'
import { speaking } from '../desk/speaking.ts'
import type { AppliedContent } from './record.ts'
import { statementNow } from './statement.ts'

/** A page as it was signed, with the pages around it. */
export interface SignedPage {
  number: number
  signedBy: string
  signedAt: number
  content: AppliedContent
  jobNumber: number
  /** The number of the page that corrects it; null: none does. */
  correctedBy: number | null
}

/** The page of this id. @throws Refusal `missing` */
export async function signedPage(tx: Tx, entryId: string): Promise<SignedPage> {
  const row = await tx.appliedEntry.findUnique({ where: { id: entryId }, include: pageParts })
  return pageOf(found(row, { entryId }, say('This page is not there; look at the record again.')))
}

/** The page a code names, `212-1`; null where there is none. */
export async function pageNamed(tx: Tx, reference: string): Promise<SignedPage | null> {
  const [job, number] = reference.split('-').map(Number) as [number, number]
  const record = await tx.appliedRecord.findFirst({
    where: { job: { number: job } },
    include: { entries: { where: { number }, include: pageParts } },
  })
  const row = record?.entries[0]
  return row ? pageOf(row) : null
}

const pageParts = { record: { include: { entries: true, job: { select: { number: true } } } } } as const

type PageRow = NonNullable<Awaited<ReturnType<typeof rowOf>>>
const rowOf = (tx: Tx, id: string) => tx.appliedEntry.findUnique({ where: { id }, include: pageParts })

function pageOf({ id, number, signedBy, signedAt, content, record }: PageRow): SignedPage {
  return {
    number,
    signedBy,
    signedAt,
    content: fromJson<AppliedContent>(content),
    jobNumber: record.job.number,
    correctedBy: record.entries.find(other => other.correctsId === id)?.number ?? null,
  }
}

export const referenceOf = ({ jobNumber, number }: SignedPage) => `${jobNumber}-${number}`

/**
 * What the certificate states, in the language it was signed in. Its words are part of what is signed, so that a changed
 * wording, in the code or in a catalogue, would turn every certificate of before into a no.
 */
export function statementOf(page: SignedPage, zone: string): StatementSection[] {
  const { facts, draft, language = 'en' } = page.content
  return speaking(language, () => statementNow({ ...page, facts, draft }, zone))
}

export const digestOf = (statement: string) => createHash('sha256').update(statement).digest('base64url')

/** The code of a page's certificate; the same page gives the same code, because Ed25519 signs without chance. */
export function codeOf(page: SignedPage, zone: string, signer: Signer): string {
  const reference = referenceOf(page)
  const digest = digestOf(statementText(statementOf(page, zone)))
  const { id: key } = signer.key()
  return codeText({ reference, digest, signature: signer.sign(signedText({ reference, digest })), key })
}
