/** One signed page of an intake as a paper for the owner, with the drawing, the readings and the photos. */
import { dirname } from 'node:path'
import { type IntakeReport, intakeReportPdf } from '../../documents/intakeReport.ts'
import { momentWords } from '../../domain/calendar/index.ts'
import { defectWords, typedSignature, waxWords } from '../../domain/intake/index.ts'
import { localeNow, say } from '../../domain/language/index.ts'
import {
  carThickness,
  degreesWords,
  measureRules,
  type ThicknessRules,
  thicknessWords,
} from '../../domain/measure/index.ts'
import { found } from '../../domain/refusal.ts'
import { readPhoto } from '../../store/photos/photoFiles.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { speakingToOwner } from '../desk/speaking.ts'
import { getIntake, type IntakeContent, type IntakeEntryView, type IntakeView } from './intake.ts'

/** The PDF of a signed page, in the language of the owner. */
export async function intakeReport(desk: Desk, { entryId }: { entryId: string }) {
  const row = found(
    await desk.store.read.intakeEntry.findUnique({
      where: { id: entryId },
      select: { intake: { select: { jobId: true } } },
    }),
    { entryId },
    say('That page is not there; look at the intake again.'),
  )
  const { jobId } = row.intake
  return speakingToOwner(desk.store.read, jobId, async () => {
    const record = await getIntake(desk, { jobId })
    const entry = record.entries.find(({ id }) => id === entryId)!
    const [letterhead, photos] = await Promise.all([
      letterheadOf(desk.store.read),
      photosOf(desk, record, entry),
    ])
    const bytes = await intakeReportPdf({ at: desk.now(), ...letterhead, ...wordsOf(record, entry), photos })
    return { name: `intake-${record.number}-${entry.number}.pdf`, type: 'application/pdf', bytes }
  })
}

async function photosOf(desk: Desk, record: IntakeView, { content }: IntakeEntryView) {
  const kept = new Map(record.photos.map(photo => [photo.id, photo]))
  return Promise.all(
    content.photos.map(async ({ id, sha256 }) => {
      const { name, width, height } = kept.get(id) ?? { name: '', width: 1, height: 1 }
      // The small one: a hundred of the others would make a paper that no mail carries.
      const jpeg = kept.has(id) ? await readPhoto(dirname(desk.store.source.file), sha256, true) : null
      return { name, jpeg, width, height }
    }),
  )
}

type Facts = readonly (readonly [string, string])[]

function wordsOf(
  record: IntakeView,
  entry: IntakeEntryView,
): Omit<IntakeReport, 'at' | 'paper' | 'issuer' | 'photos'> {
  const { facts, draft } = entry.content
  const { zone, units } = record
  const rules = (entry.content.rules ?? measureRules()).thickness
  const correctedBy = record.entries.find(each => each.corrects === entry.number)?.number ?? null
  const signedAt = momentWords(entry.signedAt, zone)
  const signedWords = `${entry.ownerName}, ${signedAt}`
  const typed = entry.signature === typedSignature
  const said = (of: Facts) => of.filter(([, words]) => words !== '')
  return {
    title: say('Intake of {plate}', { plate: facts.plate }),
    reference: say('intake of job {jobNumber}, page {number}', {
      jobNumber: facts.jobNumber,
      number: entry.number,
    }),
    to: [facts.customerName],
    facts: said([
      [say('Job'), String(facts.jobNumber)],
      [say('Signed'), signedAt],
    ]),
    standing: [
      ...(entry.corrects === null
        ? []
        : [say('Corrects page {corrects}: {reason}.', { corrects: entry.corrects, reason: entry.reason })]),
      ...(correctedBy === null
        ? []
        : [say('Corrected by page {correctedBy}; kept as it was signed.', { correctedBy })]),
    ],
    car: said([
      [
        say('Vehicle'),
        `${facts.plate}, ${facts.vehicleWords}${facts.vin ? say(', VIN {vin}', { vin: facts.vin }) : ''}`,
      ],
      [say('Treatments'), facts.treatments.map(({ name }) => name).join(', ')],
      [
        say('Odometer'),
        draft.odometer === null ? '' : `${draft.odometer.toLocaleString(localeNow())} ${draft.odometerUnit}`,
      ],
      [
        say('Fuel or charge'),
        draft.fuelEighths === null ? '' : say('{fuelEighths} of 8', { fuelEighths: draft.fuelEighths }),
      ],
      [say('Keys||of the car'), draft.keys === null ? '' : String(draft.keys)],
      [say('Belongings'), draft.belongings],
      [say('Wax or sealant'), waxWords(draft.wax)],
      [say('Air'), draft.airC === null ? '' : degreesWords(draft.airC, units)],
      [say('Panel||its temperature'), draft.panelC === null ? '' : degreesWords(draft.panelC, units)],
      [say('Damage'), draft.damageAgreed ? say('The owner agrees to what is marked here.') : ''],
      [say('Note'), draft.note],
    ]),
    shape: draft.shape,
    marks: draft.defects.map(defect => ({
      x: defect.x,
      y: defect.y,
      severity: defect.severity,
      words: `${defectWords(defect)}${defect.note ? `: ${defect.note}` : ''}`,
    })),
    thickness: panelRows(entry.content, rules, units),
    judged: say(
      'Floor {floorUm}, less {gaugeUm} for the gauge; of a clear coat at most {mostTakenUm} in all its life (common practice, no source). A gauge reads all layers together: what is left of the clear coat nobody can see.',
      {
        floorUm: thicknessWords(rules.floorUm, units),
        gaugeUm: thicknessWords(rules.gaugeUm, units),
        mostTakenUm: thicknessWords(rules.mostTakenUm, units),
      },
    ),
    signed: typed ? say('Confirmed with the typed name: {name}', { name: signedWords }) : signedWords,
    signature: typed ? null : entry.signature,
  }
}

/** Panel by panel what was read and what it says, by the rules of the page's day. */
function panelRows({ draft }: IntakeContent, rules: ThicknessRules, units: 'us' | 'metric') {
  const words = (um: number) => thicknessWords(um, units)
  return carThickness(draft.thickness, rules, words).panels.map(panel => ({
    panel: say(panel.panel),
    readings: draft.thickness
      .filter(each => each.panel === panel.panel)
      .map(each => words(each.um))
      .join(', '),
    typical: words(panel.typicalUm),
    least: words(panel.leastUm),
    says: [
      panel.belowFloor
        ? say('Under the floor: no correction without a reason.')
        : say('Correction by estimate {budgetUm} at most.', { budgetUm: words(panel.budgetUm) }),
      panel.reason ?? '',
    ]
      .filter(Boolean)
      .join(' '),
  }))
}
