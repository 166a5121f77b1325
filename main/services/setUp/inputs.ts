/** What the first run and the shop's settings send. */

import { z } from 'zod'
import { type CureProfile, figures, outsideSeasons, windowNames } from '../../domain/cure/index.ts'
import { clockHours, dateOrders, languages, word } from '../../domain/language/index.ts'
import {
  checkMoments,
  coatingFamilies,
  conditions,
  handoverRules,
  lentKinds,
  missedWorks,
  panelFinishes,
  papers,
  productKinds,
  sizeClasses,
  stages,
  unitSystems,
} from '../../domain/shop/index.ts'
import {
  accepted,
  capability,
  edited,
  id,
  minute,
  number,
  skill,
  text,
  version,
  versionOrNone,
  wallSpan,
  weekly,
  whole,
} from '../desk/inputs.ts'

const basics = {
  name: text,
  zone: text,
  currency: text,
  units: z.enum(unitSystems),
  country: text,
  /** English unless said; a change that does not name it leaves it. */
  language: z.enum(languages).exactOptional(),
  weekly,
}

export const shopSetUp = z.object({
  ...basics,
  bays: z.array(z.object({ name: text, capabilities: z.array(capability).max(4) })).max(60),
  crew: z.array(z.object({ name: text, skills: z.array(skill).max(4) })).max(60),
  /** Begin with the usual treatments and products, unpriced. */
  starters: z.boolean().default(true),
})
export type ShopSetUp = z.infer<typeof shopSetUp>

export const shopUpdate = z.object({
  ...basics,
  /** How times and dates are written; null: as is usual in its country. A change that does not name them leaves them. */
  clockHours: z.literal(clockHours).nullable().exactOptional(),
  dateOrder: z.enum(dateOrders).nullable().exactOptional(),
  weekBegins: z.int().min(1).max(7).nullable().exactOptional(),
  gridMin: whole(word('Give a number of minutes.')),
  handoverRule: z.enum(handoverRules),
  conditionFactors: z.record(z.enum(conditions), number(word('Give a number.'))),
  /** °C by season; null: not known. */
  outsideUsual: z.record(z.enum(outsideSeasons), number(word('Give a temperature.'))).nullable(),
  phone: text.nullable(),
  email: text.nullable(),
  address: text.nullable(),
  version,
  accepted,
})
export type ShopUpdate = z.infer<typeof shopUpdate>

/** The logo is left as it is where it is not sent, and taken off by null. */
export const papersInput = z.object({
  version: versionOrNone,
  paper: z.enum(papers).nullable(),
  colour: z.string(word('Choose a colour.')).max(20),
  logo: z
    .object({
      fileName: text,
      // A megabyte in base64, and some.
      base64: z.base64(word('The file did not come whole; choose it again.')).max(1_500_000),
    })
    .transform(({ fileName, base64 }) => ({ fileName, bytes: new Uint8Array(Buffer.from(base64, 'base64')) }))
    .nullable()
    .exactOptional(),
})
export type PapersInput = z.infer<typeof papersInput>

export const bayInput = z.object({
  ...edited,
  name: text,
  capabilities: z.array(capability).max(4),
  /** What it offers besides, by name; none unless said. */
  offers: z.array(text).max(60).optional(),
  accepted,
})
export type BayInput = z.infer<typeof bayInput>

const span = { fromAt: minute, toAt: minute, reason: text }

export const closureInput = z.object({ ...edited, ...span, bayId: id, accepted })
export type ClosureInput = z.infer<typeof closureInput>

export const crewInput = z.object({
  ...edited,
  name: text,
  skills: z.array(skill).max(4),
  /** Of somebody from outside, in whole days; 0 unless said. */
  noticeDays: whole(word('Give the days of notice.'), 365).optional(),
  /** Null: whenever the shop is open. */
  weekly: weekly.nullable(),
  accepted,
})
export type CrewInput = z.infer<typeof crewInput>

export const absenceInput = z.object({ ...edited, ...span, crewId: id, accepted })
export type AbsenceInput = z.infer<typeof absenceInput>

export const exceptionInput = z.object({
  ...edited,
  date: text,
  /** The day's hours in place of the weekly ones; empty: closed. */
  hours: z.array(wallSpan).max(10),
  note: text,
  accepted,
})
export type ExceptionInput = z.infer<typeof exceptionInput>

const minutes = number(word('Give a duration, such as 1 h 30.'))
const figure = number(word('Give a number.'))

/** The shape of a cure profile; what its figures may be is the domain's to say. */
const cureProfile = z.object({
  tackFreeMin: minutes,
  recoat: z.object({ minMin: minutes, maxMin: minutes }).nullable(),
  topper: z
    .object({
      minMin: minutes,
      advisedMin: minutes,
      maxMin: minutes.nullable(),
      productIds: z.array(id).max(60).readonly(),
    })
    .nullable(),
  windowRows: z
    .array(
      z.object({
        window: z.enum(windowNames),
        fromC: figure,
        toC: figure,
        minMin: minutes,
        maxMin: minutes.nullable(),
      }),
    )
    .max(20)
    .readonly(),
  handoverMin: minutes,
  handoverAdvisedMin: minutes,
  keepDryMin: minutes,
  firstWashMin: minutes,
  firstPeriod: z.object({ earlyMin: minutes, lateMin: minutes, degree: figure }),
  fullCure: z.object({ earlyMin: minutes, lateMin: minutes }),
  temperature: z.object({ minC: figure, maxC: figure }),
  humidity: z.object({ minPercent: figure, maxPercent: figure }),
  referenceC: figure,
  rate: z.discriminatedUnion('rule', [
    z.object({ rule: z.literal('arrhenius'), activationOverRK: figure }),
    z.object({ rule: z.literal('doubling') }),
    z.object({ rule: z.literal('linear'), datumC: figure }),
  ]),
  forcedCure: z
    .array(z.object({ panelC: figure, minutes: minutes, standsForMin: minutes }))
    .max(20)
    .readonly(),
  missedRecoat: text,
  sources: z.record(z.enum(figures), z.enum(['data sheet', 'common practice'])),
}) satisfies z.ZodType<CureProfile>

export const productInput = z.object({
  ...edited,
  name: text,
  kind: z.enum(productKinds),
  /** What a coating is for; the paint unless said otherwise. */
  family: z.enum(coatingFamilies).default('paint'),
  /** What it may touch; null or left out: what is usual for its kind. */
  finishes: z.array(z.enum(panelFinishes)).max(20).readonly().nullable().optional(),
  /** Null for what does not cure. */
  cureProfile: cureProfile.nullable(),
  accepted,
})
export type ProductInput = z.input<typeof productInput>

const sizes = z.enum(sizeClasses)

const step = z.object({
  name: text,
  stage: z.enum(stages),
  needs: capability,
  asks: z.array(text).max(60).readonly().exactOptional(),
  skill: skill.nullable(),
  crew: number(word('Give how many people.')),
  help: z
    .object({ crew: number(word('Give how many people.')), from: minutes, minutes })
    .nullable()
    .exactOptional(),
  splittable: z.boolean(),
  sameBay: z.boolean(),
  waitMin: minutes.nullable(),
  waitMax: minutes.nullable(),
  nextWithinMin: minutes.nullable().exactOptional(),
  missed: z.enum(missedWorks).nullable().exactOptional(),
  missedMin: minutes.nullable().exactOptional(),
  minutes: z.record(sizes, minutes),
  byCondition: z.boolean(),
  productId: id.nullable(),
})

export const treatmentInput = z.object({
  ...edited,
  name: text,
  summary: text,
  /** Minor units by size; 0: not priced. */
  prices: z.record(sizes, number(word('Give an amount.'), 1_000_000_000_000)),
  needsTwoPeople: z.boolean().optional(),
  /** Its tax rate by the money rules; empty or left out: the usual one. */
  taxKey: text.optional(),
  /** Nothing is ticked off unless said. */
  checks: z
    .array(z.object({ moment: z.enum(checkMoments), words: text }))
    .max(60)
    .readonly()
    .optional(),
  steps: z.array(step).max(40),
})
export type TreatmentInput = z.infer<typeof treatmentInput>

export const lendableInput = z.object({ ...edited, name: text, kind: z.enum(lentKinds) })
export type LendableInput = z.infer<typeof lendableInput>
