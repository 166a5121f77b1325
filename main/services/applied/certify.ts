/** What a signed page states for good, and the code that proves it. */

import { createHash } from 'node:crypto'
import { durationWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import {
  codeText,
  momentForGood,
  type StatementSection,
  signedText,
  statementText,
} from '../../domain/proof/index.ts'
import { found } from '../../domain/refusal.ts'
import { fromJson } from '../../store/json.ts'
import type { Signer } from '../../store/signingKey.ts'
import type { Tx } from '../../store/store.ts'
import type { AppliedContent } from './record.ts'

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
 * What the certificate states. The owner is not in it: it goes with the car. Its words are part of what is signed, so
 * that a changed wording here would turn every certificate of before into a no.
 */
export function statementOf(page: SignedPage, zone: string): StatementSection[] {
  const { facts, draft } = page.content
  const when = (at: number) => momentForGood(at, zone)
  return [
    {
      title: say('Car and record'),
      facts: [
        [say('Shop'), facts.shopName],
        [
          say('Job and page'),
          say('{jobNumber}, page {number}', { jobNumber: page.jobNumber, number: page.number }),
        ],
        [say('Car'), facts.vehicleWords],
        [say('Identification number'), facts.vin ?? say('not on file')],
        [say('Treatments'), facts.treatments.join('; ')],
        [say('Handed over'), facts.leftAt === null ? '' : when(facts.leftAt)],
        [say('Signed'), `${page.signedBy}, ${when(page.signedAt)}`],
        [say('Note'), draft.note],
      ],
    },
    ...facts.layers.map((layer, i) => {
      const own = draft.layers.find(({ position }) => position === layer.position)
      const panels = own?.zones.map(({ name, finish }) => `${name} (${finish})`).join(', ') ?? ''
      return {
        title: `${i + 1}. ${layer.name}`,
        facts: [
          [say('Product'), layer.productName],
          [say('Lot or batch'), own?.lot ?? ''],
          [
            say('Laid'),
            say('{startAt} to {endAt}', { startAt: when(layer.startAt), endAt: when(layer.endAt) }),
          ],
          [say('Laid by'), own?.who ?? ''],
          [say('On'), panels],
          [say('Conditions'), layer.conditions],
          [say('Window of the coat beneath'), layer.window ?? ''],
          [
            say('Cure at handover'),
            layer.ageMin === null
              ? ''
              : say('{ageMin} at {referenceC} °C', {
                  ageMin: durationWords(layer.ageMin),
                  referenceC: layer.referenceC,
                }),
          ],
        ] as const,
      }
    }),
  ]
}

export const digestOf = (statement: string) => createHash('sha256').update(statement).digest('base64url')

/** The code of a page's certificate; the same page gives the same code, because Ed25519 signs without chance. */
export function codeOf(page: SignedPage, zone: string, signer: Signer): string {
  const reference = referenceOf(page)
  const digest = digestOf(statementText(statementOf(page, zone)))
  const { id: key } = signer.key()
  return codeText({ reference, digest, signature: signer.sign(signedText({ reference, digest })), key })
}
