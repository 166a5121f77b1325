/** What went on a car, as it is edited, signed and printed. */

export const zoneFinishes = ['gloss', 'satin', 'matte', 'film', 'glass', 'wheels'] as const
export type ZoneFinish = (typeof zoneFinishes)[number]

/** A panel or zone, and what its surface is. */
export interface Zone {
  name: string
  finish: ZoneFinish
}

/** What a person enters of one layer. */
export interface LayerDraft {
  position: number
  /** The maker's batch or the shop's bottle number. */
  lot: string
  who: string
  zones: Zone[]
}

export interface AppliedDraft {
  layers: LayerDraft[]
  note: string
}

/** What the shop's own rows say of one layer. */
export interface LayerFacts {
  position: number
  name: string
  productName: string
  stage: string
  startAt: number
  endAt: number
  bayName: string
  /** The conditions it was begun in, the rules not met and the reason, in words. */
  conditions: string
  /** Whether it went on in the window of the coat beneath, in words; null where nothing lies beneath. */
  window: string | null
  /** Cure age at handover, in minutes at the profile's reference temperature; null while the car is here. */
  ageMin: number | null
  referenceC: number
  /** How the time until then is known, in minutes. */
  parts: { measuredMin: number; assumedMin: number; projectedMin: number } | null
  /** The profile's earliest handover and whose figure it is. */
  rule: string
}

export interface AppliedFacts {
  shopName: string
  jobNumber: number
  customerName: string
  plate: string
  vehicleWords: string
  vin: string | null
  treatments: string[]
  leftAt: number | null
  layers: LayerFacts[]
  heatings: string[]
  /** Reasons given where something was done against a figure: conditions, an early handover. */
  overrides: string[]
}

/** A signed page: the facts and what was entered, as they were then. */
export interface AppliedContent {
  facts: AppliedFacts
  draft: AppliedDraft
}

export interface AppliedEntryView {
  id: string
  number: number
  content: AppliedContent
  reason: string
  signedBy: string
  signedAt: number
  /** The number of the entry it corrects. */
  corrects: number | null
}

export interface AppliedView {
  jobId: string
  zone: string
  nowAt: number
  /** 0 while nothing was saved. */
  version: number
  facts: AppliedFacts
  /** As last saved, with what the shop knows filled in where nobody has entered anything. */
  draft: AppliedDraft
  /** Lots of each layer's product by position: those its step drew from first. */
  lots: { position: number; lots: string[] }[]
  entries: AppliedEntryView[]
  /** Why it cannot be signed yet; null: it can, or is. */
  notYet: string | null
}
