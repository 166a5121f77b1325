import { certificatePdf } from '../../documents/certificate.ts'
import { verifyPage } from '../../documents/verifyPage.ts'
import { statementText } from '../../domain/proof/index.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { shopOf } from '../desk/shopView.ts'
import { speakingToOwner } from '../desk/speaking.ts'
import { codeOf, referenceOf, signedPage, statementOf } from './certify.ts'

/** The certificate of a signed page: what was applied, for the life of the car, with the code that proves it. */
export async function certificateFile(desk: Desk, { entryId }: { entryId: string }) {
  return speakingToOwner(desk.store.read, await jobOf(desk, entryId), () => certificateIn(desk, entryId))
}

async function certificateIn(desk: Desk, entryId: string) {
  const { page, sections, code } = await certified(desk, entryId)
  const bytes = await certificatePdf({
    at: page.signedAt,
    ...(await letterheadOf(desk.store.read)),
    reference: referenceOf(page),
    sections,
    correctedBy: page.correctedBy,
    code,
  })
  return { name: `certificate-${referenceOf(page)}.pdf`, type: 'application/pdf', bytes }
}

/** A page that checks the certificate on any computer, without this app and without the network. */
export async function verifyFile(desk: Desk, { entryId }: { entryId: string }) {
  return speakingToOwner(desk.store.read, await jobOf(desk, entryId), () => verifyIn(desk, entryId))
}

async function verifyIn(desk: Desk, entryId: string) {
  const { page, sections, code } = await certified(desk, entryId)
  const html = verifyPage({
    shopName: page.content.facts.shopName,
    reference: referenceOf(page),
    statement: statementText(sections),
    code,
    key: desk.store.signer.key(),
  })
  return {
    name: `verify-${referenceOf(page)}.html`,
    type: 'text/html; charset=utf-8',
    bytes: new TextEncoder().encode(html),
    keep: true,
  }
}

async function jobOf(desk: Desk, entryId: string): Promise<string> {
  const entry = await desk.store.read.appliedEntry.findUnique({
    where: { id: entryId },
    select: { record: { select: { jobId: true } } },
  })
  return entry?.record.jobId ?? ''
}

async function certified(desk: Desk, entryId: string) {
  const tx = desk.store.read
  const [page, { zone }] = [await signedPage(tx, entryId), await shopOf(tx)]
  return { page, sections: statementOf(page, zone), code: codeOf(page, zone, desk.store.signer) }
}
