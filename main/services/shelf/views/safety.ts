import type { PictogramCode, SignalWord, StorageGroup } from '../../../domain/hazard/index.ts'
import type { SafetyFields } from '../inputs.ts'

export type { SafetyFields }

export interface SafetyView extends SafetyFields {
  productId: string
  productName: string
  /** 0 where nothing has been entered yet. */
  version: number
  regime: 'un-ghs' | 'eu-clp' | 'us-osha'
  /** The data sheet as a file: same origin, behind the guard. */
  sheet: { path: string; name: string; size: number; at: number; who: string } | null
  /** What the codes entered call for; the maker's label decides. */
  label: {
    pictograms: { code: PictogramCode; symbol: string }[]
    signalWord: SignalWord | null
    hazards: { code: string; text: string }[]
    precautions: { code: string; text: string }[]
    /** Called for and given up for another pictogram, with the rule. */
    givenUp: { code: PictogramCode; rule: string }[]
    /** Codes whose category decides something the code does not tell. */
    unsure: string[]
  }
  /** What the codes suggest where no group was entered. */
  suggestedGroup: StorageGroup | null
  groupWords: string | null
  /** One sentence for every point on which the sheet says nothing. */
  silences: { field: string; words: string }[]
  /** Where what was entered does not fit together. */
  doubts: string[]
  /** One line to hand over with the chemical: signal word, equipment, sheet. */
  caution: string
}

export interface SafetyWarningsView {
  storage: { place: string; productIds: string[]; words: string }[]
  flammable: {
    totalMl: number
    byCode: Record<'H224' | 'H225' | 'H226', number>
    aerosolMl: number
    silentMl: number
    limitMl: number | null
    share: number | null
    state: 'no limit' | 'within' | 'near' | 'over'
    words: string
  }
  /** Products on the shelf without a sheet, or with one of more than three years. */
  sheets: { productId: string; productName: string; words: string }[]
  caution: string
}
