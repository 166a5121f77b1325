/** The intake: open until the owner has signed it, then never changed; a correction is a new page that points back. */

import { checkIntake, readThickness } from '../../domain/intake/index.ts'
import { say } from '../../domain/language/index.ts'
import {
  carThickness,
  checkGloss,
  checkTile,
  type GlossSet,
  glossDifferences,
  type MeasureRules,
  thicknessDifferences,
} from '../../domain/measure/index.ts'
import { systemCautions, toolCautions } from '../../domain/paint/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { type PaintSystem, type PanelNoted, panelNames } from '../../domain/shop/index.ts'
import { fromJson, toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { plateWords, vehicleWords } from '../floor/jobRows.ts'
import type {
  AfterInput,
  CorrectIntakeInput,
  GlossSetInput,
  IntakeDraft,
  IntakeInput,
  Measured,
  PasteInput,
  SignIntakeInput,
} from './inputs.ts'
import { forbidden, type IntakeJob, intakeJob, lastDraft, paintSteps } from './jobPaint.ts'
import { shopMeasureRules } from './measuring.ts'

/** A signed page: the facts, what was entered and which photos belong to it, as they were then. */
export interface IntakeContent {
  facts: ReturnType<typeof factsOf>
  draft: IntakeDraft
  photos: { id: string; sha256: string }[]
  /** What its readings were judged by; pages signed before a shop could set it have none. */
  rules?: MeasureRules
}

export type IntakeView = Awaited<ReturnType<typeof viewOf>>
export type IntakeEntryView = IntakeView['entries'][number]

export async function getIntake(desk: Desk, { jobId }: { jobId: string }): Promise<IntakeView> {
  return viewOf(desk.store.read, desk.now(), jobId)
}

async function viewOf(tx: Tx, nowAt: number, jobId: string) {
  const [job, shop, rules] = await Promise.all([intakeJob(tx, jobId), shopOf(tx), shopMeasureRules(tx)])
  const draft = lastDraft(job) ?? emptyDraft(shop.units === 'us')
  const after = job.afterWork ? fromJson<Measured>(job.afterWork.content) : emptyMeasured(draft)
  const pages = job.intake?.entries ?? []
  return {
    jobId,
    number: job.number,
    zone: shop.zone,
    units: shop.units,
    open: job.status === 'booked' || job.status === 'inShop',
    version: job.intake?.version ?? 0,
    facts: factsOf(job, shop.name),
    draft,
    entries: pages.map(({ content, correctsId, intakeId: _, ...entry }) => ({
      ...entry,
      content: fromJson<IntakeContent>(content),
      /** The number of the page it corrects. */
      corrects: pages.find(({ id }) => id === correctsId)?.number ?? null,
    })),
    photos: job.photos.map(({ id, name, width, height }) => ({ id, name, width, height })),
    after: { version: job.afterWork?.version ?? 0, content: after },
    /** Panel by panel what the work changed. */
    gained: {
      gloss: glossDifferences(setsOf(draft), setsOf(after), rules.glossRepeatabilityGu),
      thickness: thicknessDifferences(draft.thickness, after.thickness, rules.gaugeRepeatabilityUm),
    },
    /** What the readings are judged by now; a signed page has those of its day. */
    rules,
    forbidden: forbidden(job, nowAt, { zone: shop.zone, units: shop.units, rules }),
    decisions: job.decisions.map(({ treatment, rule, panels, decision, reason, at, who }) => ({
      treatment,
      rule,
      panels: fromJson<string[]>(panels),
      decision,
      reason,
      at,
      who,
    })),
    cautions: [
      ...toolCautions(paintSteps(job)),
      ...systemCautions(job.vehicle.paint as PaintSystem, paintSteps(job)),
    ],
  }
}

function factsOf(job: IntakeJob, shopName: string) {
  const noted = fromJson<PanelNoted[] | null>(job.vehicle.panels) ?? []
  return {
    shopName,
    jobNumber: job.number,
    customerName: job.customer.name,
    plate: plateWords(job.vehicle.plate),
    vehicleWords: vehicleWords(job.vehicle),
    vin: job.vehicle.vin,
    paint: job.vehicle.paint as PaintSystem,
    treatments: job.treatments.map(({ name, leftOut }) => ({ name, leftOut })),
    /** Each panel with its finish, as the car is on file. */
    finishes: panelNames.map(panel => ({
      panel,
      finish: noted.find(each => each.panel === panel)?.finish ?? job.vehicle.finish,
    })),
  }
}

export const emptyDraft = (miles: boolean): IntakeDraft => ({
  shape: 'saloon',
  defects: [],
  gauge: '',
  thickness: [],
  gloss: [],
  airC: null,
  panelC: null,
  odometer: null,
  odometerUnit: miles ? 'mi' : 'km',
  fuelEighths: null,
  keys: null,
  belongings: '',
  wax: 'not asked',
  damageAgreed: false,
  note: '',
})

/** The same instruments measure again: their serial numbers are there already, the tile has to be read anew. */
const emptyMeasured = ({ gauge, gloss }: Measured): Measured => ({
  gauge,
  thickness: [],
  gloss: gloss.map(set => ({
    ...set,
    startGu: null,
    endGu: null,
    panels: set.panels.map(({ panel }) => ({ panel, gu: [] })),
  })),
})

/** A tile nobody noted the figure of calibrates nothing. */
const setsOf = ({ gloss }: { gloss: readonly GlossSetInput[] }): GlossSet[] =>
  gloss.map(set => ({
    ...set,
    tileGu: set.tileGu ?? 0,
    startGu: set.tileGu === null ? null : set.startGu,
  }))

/** Refuses readings that none can be, as any screen would that judges them. */
function checkMeasured(measured: Measured): void {
  carThickness(measured.thickness)
  for (const set of setsOf(measured)) {
    if (set.startGu !== null) checkTile(set.tileGu, set.startGu, 0)
    for (const { gu } of set.panels) for (const each of gu) checkGloss(each, 'gloss')
  }
}

/** Readings pasted or from a file, behind those there are already. */
export function pasteThickness({ text, unit, readings }: PasteInput) {
  return { readings: readThickness(text, unit, readings) }
}

/** Keeps what was entered so far. Refused once the intake is signed. */
export function saveIntake(desk: Desk, { jobId, version, draft }: IntakeInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    await keepDraft(tx, await intakeJob(tx, jobId), version, draft)
    audit({ act: 'intake saved', entity: 'job', entityId: jobId })
    return { version: version + 1 }
  })
}

async function keepDraft(
  tx: Tx,
  { id: jobId, intake }: IntakeJob,
  version: number,
  draft: IntakeDraft,
): Promise<string> {
  checkMeasured(draft)
  if (intake && intake.entries.length > 0)
    refuse(
      'signed',
      { draft: null },
      say('The intake is signed and is not changed any more: sign a correction.'),
    )
  if ((intake?.version ?? 0) !== version) assertFresh(0, 'intake', jobId)
  const json = toJson(draft)
  if (!intake) return (await tx.intake.create({ data: { jobId, draft: json } })).id
  await tx.intake.update({ where: { jobId }, data: { draft: json, version: { increment: 1 } } })
  return intake.id
}

/** The owner signs: the car as it is on file, what was entered and its photos, as they are now, for good. */
export function signIntake(desk: Desk, input: SignIntakeInput): Promise<{ number: number; version: number }> {
  return sign(desk, input, async (tx, job) => ({
    intakeId: await keepDraft(tx, job, input.version, input.draft),
    number: 1,
    reason: '',
    correctsId: null,
  }))
}

/** A new page that points back at the one it corrects, signed again; the old one stays as it was. */
export async function correctIntake(
  desk: Desk,
  input: CorrectIntakeInput,
): Promise<{ number: number; version: number }> {
  const reason = input.reason.trim()
  if (reason === '')
    refuse(
      'reason-needed',
      { reason: input.reason },
      say('Write what was wrong; it stands on the correction.'),
    )
  return sign(desk, input, async (_tx, { intake }) => {
    const entry = intake?.entries.find(({ id }) => id === input.correctsId)
    if (!intake || !entry)
      refuse(
        'missing',
        { correctsId: input.correctsId },
        say('That page is not there; look at the intake again.'),
      )
    const number = Math.max(...intake.entries.map(each => each.number)) + 1
    return { intakeId: intake.id, number, reason, correctsId: entry.id }
  })
}

type Signed = Pick<SignIntakeInput, 'jobId' | 'draft' | 'ownerName' | 'signature'>
interface Place {
  intakeId: string
  number: number
  reason: string
  correctsId: string | null
}

async function sign(desk: Desk, input: Signed, place: (tx: Tx, job: IntakeJob) => Promise<Place>) {
  const { jobId, draft, signature } = input
  checkIntake({ ...draft, ownerName: input.ownerName, signature })
  return act(desk, async (tx, audit, signedAt) => {
    const [job, shop, rules] = await Promise.all([intakeJob(tx, jobId), shopOf(tx), shopMeasureRules(tx)])
    checkMeasured(draft)
    const placed = await place(tx, job)
    const ownerName = input.ownerName.trim()
    await tx.intakeEntry.create({
      data: {
        ...placed,
        content: toJson(contentOf(job, { shopName: shop.name, rules }, draft)),
        ownerName,
        signature,
        signedAt,
      },
    })
    audit({
      act: placed.number === 1 ? 'intake signed' : 'intake corrected',
      entity: 'job',
      entityId: jobId,
      detail: { number: placed.number, reason: placed.reason },
    })
    return { number: placed.number, version: (job.intake?.version ?? 0) + (placed.number === 1 ? 1 : 0) }
  })
}

/** What stands on a page signed now. */
export function contentOf(
  job: IntakeJob,
  { shopName, rules }: { shopName: string; rules: MeasureRules },
  draft: IntakeDraft,
): IntakeContent {
  const photos = job.photos.map(({ id, sha256 }) => ({ id, sha256 }))
  return { facts: factsOf(job, shopName), draft, photos, rules }
}

/** Keeps what was measured once the work was done. */
export function saveAfter(desk: Desk, { jobId, version, content }: AfterInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    await intakeJob(tx, jobId)
    checkMeasured(content)
    const kept = { table: tx.afterWork, entity: 'job', noun: 'measurement' }
    const { version: now } = await saveSingle(
      (entry: Parameters<typeof audit>[0]) =>
        audit({ act: 'measured after the work', entity: entry.entity, entityId: jobId }),
      kept,
      { key: { jobId }, version },
      { content: toJson(content) },
    )
    return { version: now }
  })
}
