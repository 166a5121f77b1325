/** The applied record: open until it is signed, then never changed; a correction is a new page that points back. */

import { type Language, languageNow, say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { fromJson, toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { speakingToOwner } from '../desk/speaking.ts'
import { jobOnFloor, noJob } from '../job/jobOnFloor.ts'
import { checkDraft, filledDraft, lotsOf, soldOver } from './draft.ts'
import { type AppliedFacts, appliedFacts } from './facts.ts'
import type { AppliedDraft, CorrectionInput, DraftInput, SignInput } from './inputs.ts'

/** A signed page: the facts and what was entered, as they were then. */
export interface AppliedContent {
  facts: AppliedFacts
  draft: AppliedDraft
  /** What its certificate is written in; left out where it was signed before the app spoke another than English. */
  language?: Language
}

export type AppliedView = Awaited<ReturnType<typeof appliedOf>>
export type AppliedEntryView = AppliedView['entries'][number]

export function getApplied(desk: Desk, { jobId }: { jobId: string }): Promise<AppliedView> {
  return appliedOf(desk.store.read, desk.now(), jobId)
}

async function appliedOf(tx: Tx, nowAt: number, jobId: string) {
  const { floor, job, products } = await jobOnFloor(tx, nowAt, jobId)
  const facts = await appliedFacts(tx, floor, job, products)
  const record = await tx.appliedRecord.findUnique({
    where: { jobId },
    include: { entries: { orderBy: { number: 'asc' } } },
  })
  const lots = await lotsOf(tx, job)
  const drawn = await tx.stockMove.findMany({ where: { jobId, kind: 'use' }, select: { position: true } })
  const pages = record?.entries ?? []
  const entries = pages.map(({ content, correctsId, recordId: _, ...entry }) => ({
    ...entry,
    content: fromJson<AppliedContent>(content),
    /** The number of the entry it corrects. */
    corrects: pages.find(({ id }) => id === correctsId)?.number ?? null,
  }))
  const saved = entries.at(-1)?.content.draft ?? fromJson<AppliedDraft | undefined>(record?.draft) ?? null
  return {
    jobId,
    zone: floor.zone,
    nowAt,
    version: record?.version ?? 0,
    facts,
    /** As last saved, with what the shop knows filled in where nobody has entered anything. */
    draft: filledDraft(
      saved,
      facts,
      job,
      floor,
      lots,
      new Set(drawn.flatMap(move => move.position ?? [])),
      await soldOver(tx, job),
    ),
    lots,
    entries,
    /** Why it cannot be signed yet; null: it can, or is. */
    notYet:
      facts.layers.length === 0
        ? say('Nothing that cures is laid yet.')
        : job.status !== 'handedOver'
          ? say('It is signed once the car is handed over: the cure age at handover belongs in it.')
          : null,
  }
}

/** Keeps what was entered so far. Refused once the record is signed. */
export function saveDraft(desk: Desk, { jobId, version, draft }: DraftInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    if ((await tx.job.count({ where: { id: jobId } })) === 0) refuse('missing', { jobId }, say(noJob))
    await keepDraft(tx, { jobId, version, draft })
    audit({ act: 'record drafted', entity: 'job', entityId: jobId })
    return { version: version + 1 }
  })
}

async function keepDraft(tx: Tx, { jobId, version, draft }: DraftInput): Promise<string> {
  const record = await tx.appliedRecord.findUnique({ where: { jobId }, include: { entries: { take: 1 } } })
  if (record && record.entries.length > 0)
    refuse(
      'signed',
      { draft: null },
      say('The record is signed and is not changed any more: sign a correction.'),
    )
  if ((record?.version ?? 0) !== version) assertFresh(0, 'record', jobId)
  const json = toJson(draft)
  if (!record) return (await tx.appliedRecord.create({ data: { jobId, draft: json } })).id
  await tx.appliedRecord.update({ where: { jobId }, data: { draft: json, version: { increment: 1 } } })
  return record.id
}

/** Signs the record: the shop's own rows and what was entered, as they are now, for good. */
export function signRecord(desk: Desk, input: SignInput): Promise<{ number: number }> {
  return sign(desk, input, async (tx, draft) => ({
    recordId: await keepDraft(tx, { ...input, draft }),
    number: 1,
    reason: '',
    correctsId: null,
  }))
}

/** A new page that points back at the one it corrects; the old one stays as it was signed. */
export async function correctRecord(desk: Desk, input: CorrectionInput): Promise<{ number: number }> {
  const reason = input.reason.trim()
  if (reason === '')
    refuse(
      'reason-needed',
      { reason: input.reason },
      say('Write what was wrong; it stands on the correction.'),
    )
  return sign(desk, input, async tx => {
    const entry = await tx.appliedEntry.findUnique({
      where: { id: input.correctsId },
      include: { record: { include: { entries: true } } },
    })
    if (!entry || entry.record.jobId !== input.jobId)
      refuse(
        'missing',
        { correctsId: input.correctsId },
        say('That entry is not there; look at the record again.'),
      )
    const number = Math.max(...entry.record.entries.map(each => each.number)) + 1
    return { recordId: entry.recordId, number, reason, correctsId: entry.id }
  })
}

async function sign(
  desk: Desk,
  input: { jobId: string; draft: AppliedDraft; signedBy: string },
  place: (
    tx: Tx,
    draft: AppliedDraft,
  ) => Promise<{ recordId: string; number: number; reason: string; correctsId: string | null }>,
): Promise<{ number: number }> {
  const signedBy = input.signedBy.trim()
  if (signedBy === '')
    refuse('name-missing', { signedBy: input.signedBy }, say('Write your name: it is what signs the record.'))
  return act(desk, async (tx, audit, signedAt) => {
    const { facts: shown, notYet } = await appliedOf(tx, signedAt, input.jobId)
    if (notYet !== null) refuse('not-yet', { draft: null }, notYet)
    const draft = checkDraft(input.draft, shown)
    const placed = await place(tx, draft)
    // Signed in the words the owner reads.
    const content = await speakingToOwner(tx, input.jobId, async (): Promise<AppliedContent> => {
      const { facts } = await appliedOf(tx, signedAt, input.jobId)
      return { facts, draft, language: languageNow() }
    })
    await tx.appliedEntry.create({
      data: { ...placed, content: toJson(content), signedBy, signedAt },
    })
    audit({
      act: placed.number === 1 ? 'record signed' : 'record corrected',
      entity: 'job',
      entityId: input.jobId,
      detail: { number: placed.number, signedBy, reason: placed.reason },
    })
    return { number: placed.number }
  })
}
