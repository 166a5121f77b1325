/** What is entered of a car as it comes, what is measured after the work, and what is decided about its paint. */

import { z } from 'zod'
import { bodyShapes, defectKinds, severities, substrates, waxStates } from '../../domain/intake/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { paintRules } from '../../domain/paint/index.ts'
import { panelNames } from '../../domain/shop/index.ts'
import { id, number, text, versionOrNone, whole } from '../desk/inputs.ts'

const line = (most: number) =>
  z.string().max(most, { error: () => say('That is too long: {most} characters at most.', { most }) })
const panel = z.enum(panelNames, word('Choose one of the panels.'))
const degrees = number(word('Give the temperature.'), 200)

/** Where it lies on the drawing, which is 1000 wide and 560 high. */
const defect = z.object({
  id: line(40),
  panel,
  kind: z.enum(defectKinds),
  severity: z.enum(severities),
  x: number(word('Mark it on the drawing.'), 1_000),
  y: number(word('Mark it on the drawing.'), 1_000),
  note: line(200),
  photoIds: z.array(id).max(10),
})
export type Defect = z.infer<typeof defect>

const spotReading = z.object({
  panel,
  spot: whole(word('Give the spot.'), 99),
  um: number(word('Give the thickness in micrometres.'), 5_000),
})

const gu = number(word('Give gloss units, 0 to 2,000.'), 2_000)

const glossSet = z.object({
  instrument: line(80),
  tile: line(80),
  substrate: z.enum(substrates),
  geometryDeg: z.union([z.literal(20), z.literal(60), z.literal(85)]),
  /** The figure on the tile at this angle; null: not noted. */
  tileGu: gu.nullable(),
  startGu: gu.nullable(),
  endGu: gu.nullable(),
  panels: z.array(z.object({ panel, gu: z.array(gu).max(20) })).max(11),
})
export type GlossSetInput = z.infer<typeof glossSet>

const measured = z.object({
  /** Its serial number. */
  gauge: line(80),
  thickness: z.array(spotReading).max(500, word('More than 500 readings; leave out what is not needed.')),
  gloss: z.array(glossSet).max(20),
})
export type Measured = z.infer<typeof measured>

const draft = measured.extend({
  shape: z.enum(bodyShapes),
  defects: z.array(defect).max(200, word('More than 200 marks; mark what matters.')),
  airC: degrees.nullable(),
  panelC: degrees.nullable(),
  /** In the unit of the car’s own dial. */
  odometer: z.int(word('Give the odometer without decimals.')).min(0).max(9_999_999).nullable(),
  odometerUnit: z.enum(['km', 'mi']),
  fuelEighths: z.int().min(0).max(8).nullable(),
  keys: z.int(word('Give the number of keys.')).min(0).max(50).nullable(),
  belongings: text,
  wax: z.enum(waxStates),
  damageAgreed: z.boolean(),
  note: text,
})
export type IntakeDraft = z.infer<typeof draft>

const ofJob = { jobId: id }

export const intakeInput = z.object({ ...ofJob, version: versionOrNone, draft })
export type IntakeInput = z.infer<typeof intakeInput>

const signed = {
  ownerName: line(80),
  /** The path of a picture: moves and lines between whole numbers; or that the typed name stands for it. */
  signature: z
    .string()
    .max(20_000, word('That signature is too long to keep; clear it and sign again.'))
    .regex(
      /^(([ML]\d{1,4} \d{1,4})*|typed)$/,
      word('The signature did not come whole; clear it and sign again.'),
    ),
}

export const signIntakeInput = intakeInput.extend(signed)
export type SignIntakeInput = z.infer<typeof signIntakeInput>

/** `correctsId` is the entry that was wrong. */
export const correctIntakeInput = z.object({ ...ofJob, ...signed, correctsId: id, draft, reason: text })
export type CorrectIntakeInput = z.infer<typeof correctIntakeInput>

export const afterInput = z.object({ ...ofJob, version: versionOrNone, content: measured })
export type AfterInput = z.infer<typeof afterInput>

const figure = number(word('Give a number, or leave it empty.'), 1_000).nullable()

/** Null: as is usual. */
export const measuringInput = z.object({
  floorUm: figure,
  gaugeRepeatabilityUm: figure,
  glossAllowedGu: figure,
  glossRepeatabilityGu: figure,
  version: versionOrNone,
})
export type MeasuringInput = z.infer<typeof measuringInput>

export const decideInput = z.object({
  ...ofJob,
  treatment: text,
  rule: z.enum(paintRules),
  panels: z.array(panel).min(1).max(11),
  decision: z.enum([word('leave out'), word('do it')]),
  reason: text,
})
export type DecideInput = z.infer<typeof decideInput>

export const pasteInput = z.object({
  text: z.string().max(20_000, word('That is too much to paste at once.')),
  unit: z.enum(['um', 'mil']),
  readings: z.array(spotReading).max(500),
})
export type PasteInput = z.infer<typeof pasteInput>

export const photoToAdd = z.object({ ...ofJob, name: line(200) })
export const onePhoto = z.object({ id })
