/** What the upkeep and car screens send. A visit is named by its plan and the day the plan's rule gave it. */

import { z } from 'zod'
import { localeNow, say, word } from '../../domain/language/index.ts'
import { lookPanels, waterLooks } from '../../domain/upkeep/index.ts'
import { accepted, date, edited, id, number, text, version, versionOrNone, whole } from '../desk/inputs.ts'
import { person } from '../records/inputs.ts'

export const planKind = z.enum(['first-wash', 'check-up', 'topper', 'inspection', 'other'])

export const channel = z.enum(['email', 'letter', 'call', 'text'])

export const why = z.string().max(400).optional()

export const visit = z.object({ planId: id, ruleOn: date })
export type VisitKey = z.infer<typeof visit>

const dueFilter = z.object({
  /** Any part of a name, plate or car. */
  text: z.string().max(200).optional(),
  kinds: z.array(planKind).max(10).optional(),
  states: z
    .array(z.enum(['later', 'soon', 'due', 'overdue']))
    .max(10)
    .optional(),
  /** Only owners who agree to be reached in some way. */
  reachable: z.boolean().optional(),
  /** Leaves out what is booked already. */
  unbooked: z.boolean().optional(),
  vehicleId: id.optional(),
})
export type DueFilter = z.infer<typeof dueFilter>

export const dueInput = z.object({
  fromDate: date,
  toDate: date,
  filter: dueFilter.optional(),
  /** How many are listed. */
  limit: z.int().min(1).max(5_000).optional(),
})
export type DueInput = z.infer<typeof dueInput>

export const skipInput = visit.extend({ why })
export type SkipInput = z.infer<typeof skipInput>

export const moveInput = visit.extend({ to: date, why })
export type MoveInput = z.infer<typeof moveInput>

/** Without `ruleOn` the plan says which visit it was; without `on` it was today. */
export const doneInput = z.object({ planId: id, ruleOn: date.optional(), on: date.optional() })
export type DoneInput = z.infer<typeof doneInput>

/** `to` is the first day back. */
export const awayInput = z.object({ vehicleId: id, from: date, to: date, why })
export type AwayInput = z.infer<typeof awayInput>

export const soldInput = z.object({ vehicleId: id, on: date.optional() })
export type SoldInput = z.infer<typeof soldInput>

/** The new owner: somebody on file, or somebody who is written down with it. */
export const handsInput = z.object({
  vehicleId: id,
  version,
  to: z.union([z.object({ customerId: id }), z.object({ customer: z.object(person) })]),
  /** Today unless said otherwise. */
  on: date.optional(),
  accepted,
})
export type HandsInput = z.input<typeof handsInput>

export const inspectInput = z.object({
  layerId: id,
  /** Today unless said otherwise. */
  on: date.optional(),
  /** What water did on each panel before the decontamination wash, and after it; null: not washed yet. */
  panels: z
    .array(
      z.object({
        panel: z.enum(lookPanels),
        before: z.enum(waterLooks),
        after: z.enum(waterLooks).nullable(),
      }),
    )
    .max(lookPanels.length),
  note: text.optional(),
})
export type InspectInput = z.infer<typeof inspectInput>

export const layerInput = z.object({ vehicleId: id, productId: id, laidOn: date })
export type LayerInput = z.infer<typeof layerInput>

export const exposureInput = z.object({
  vehicleId: id,
  /** By factor. */
  choices: z.record(z.string().max(60), z.string().max(60)),
  version: versionOrNone,
})
export type ExposureInput = z.infer<typeof exposureInput>

export const proposalInput = z.object({ planId: id, what: z.enum(['interval', 'next-visit']), toOn: date })
export type ProposalInput = z.infer<typeof proposalInput>

export const planInput = z.object({
  ...edited,
  vehicleId: id,
  kind: planKind,
  title: text,
  /** RFC 5545. */
  rule: z.string().max(500),
  anchor: z.discriminatedUnion('to', [
    z.object({ to: z.literal('date'), on: date }),
    z.object({ to: z.literal('last-done'), since: date, event: text }),
  ]),
  earlyDays: whole(word('Give a number of days.')),
  lateDays: whole(word('Give a number of days.')),
})
export type PlanInput = z.infer<typeof planInput>

export const productLifeInput = z.object({
  productId: id,
  /** Renewed after so many days at ordinary exposure, before anything is seen of it. */
  intervalDays: within(1, 7_300),
  mark: z.enum(['data sheet', 'common practice', 'set by the shop']),
  /** How it wears out: 1 at random, 2 to 4 by age. */
  shape: number(word('Give a number.')),
  /** How sure of both: 0.35 is right to within a factor of 1.4, two times of three. */
  ageSpread: number(word('Give a number.')),
  shapeSpread: number(word('Give a number.')),
  /** 0: what the program begins with. */
  version: versionOrNone,
})
export type ProductLifeInput = z.infer<typeof productLifeInput>

const label = z.string().min(1).max(120)
const name = z.string().min(1).max(60)

export const upkeepSettings = z.object({
  version: versionOrNone,
  /** Renew when the share still working has fallen to this. */
  level: share(0.5, 0.99),
  /** Opening hours of the outbox by the owner's clock, minutes after midnight. */
  fromMin: number(word('Give a time of day.')),
  toMin: number(word('Give a time of day.')),
  closedWeekdays: z.array(number(word('Give a weekday.'))).max(7),
  closedDates: z.array(date).max(400),
  /** No messages on dates on which the shop is closed by exception. */
  closedWithShop: z.boolean(),
  dailyLimit: within(0, 10_000),
  maxTries: within(1, 20),
  gapDays: within(0, 366),
  againDays: within(1, 366),
  laterDays: within(1, 366),
  /** How many days before its due day (or target) a visit's reminder is written. */
  leadDays: within(0, 366),
  /** How many days the proposed times are held. */
  holdDays: within(1, 60),
  /** Approves and sends by itself; off unless switched on. */
  automatic: z.boolean(),
  crashRisk: z.enum(['again', 'ask']),
  /** Language of owners who have none on file. */
  language: text,
  /** Where "no more messages" is mailed to; empty: the shop's sending address. */
  stopAddress: text,
  /** The treatment proposed for each kind of visit; null: chosen from what the shop sells. */
  treatments: z.partialRecord(planKind, id.nullable()),
  /** Share of the free hours that upkeep may fill. */
  roomShare: share(0, 1),
  checkUpDays: within(1, 366),
  factors: z
    .array(
      z.object({
        id: name,
        label,
        mark: z.enum(['rule of thumb', 'set by the shop']),
        choices: z.array(z.object({ id: name, label, multiplier: number(word('Give a number.')) })).max(20),
      }),
    )
    .max(20),
})
export type UpkeepSettings = z.infer<typeof upkeepSettings>

function within(least: number, most: number) {
  const words = {
    error: () =>
      say('Give a whole number from {least} to {most}.', {
        least: least.toLocaleString(localeNow()),
        most: most.toLocaleString(localeNow()),
      }),
  }
  return z.int(words).min(least, words).max(most, words)
}

function share(least: number, most: number) {
  const words = {
    error: () =>
      say('Give a share between {least} and {most}.', {
        least: least.toLocaleString(localeNow()),
        most: most.toLocaleString(localeNow()),
      }),
  }
  return z.number(words).min(least, words).max(most, words)
}
