/**
 * A product's cure profile: what its data sheet says about the time after the coat, and what common practice says
 * where the sheet is silent. All times count from the moment the coat is finished, in minutes at the reference
 * temperature.
 */
export type FigureSource = 'data sheet' | 'common practice'

export interface CureProfile {
  /** From here the car may be moved, not before. */
  readonly tackFreeMin: number
  /** When the next layer may go on; null: the sheet names no second layer. */
  readonly recoat: { readonly minMin: number; readonly maxMin: number } | null
  /** When a topper may go on, and which; null: the sheet names none. Practice has no figure for it. */
  readonly topper: TopperFigures | null
  /** What the sheet gives for a window at other temperatures; they rule there in place of the clock. */
  readonly windowRows: readonly WindowRow[]
  readonly handoverMin: number
  readonly handoverAdvisedMin: number
  /** No water until then. */
  readonly keepDryMin: number
  readonly firstWashMin: number
  /** The stretch in which most of the cure happens, at the earliest and the latest, and the degree (0..1) it ends with. */
  readonly firstPeriod: { readonly earlyMin: number; readonly lateMin: number; readonly degree: number }
  readonly fullCure: { readonly earlyMin: number; readonly lateMin: number }
  /** Air temperature in which the coat may be laid. */
  readonly temperature: { readonly minC: number; readonly maxC: number }
  readonly humidity: { readonly minPercent: number; readonly maxPercent: number }
  /** The temperature all times above hold at. */
  readonly referenceC: number
  readonly rate: RateRule
  /** Data-sheet rows only: practice has no figure for a heated cure. */
  readonly forcedCure: readonly ForcedCureRow[]
  /** What the sheet asks when the recoat window was missed. */
  readonly missedRecoat: string
  readonly sources: Readonly<Record<Figure, FigureSource>>
}

export interface TopperFigures {
  readonly minMin: number
  readonly advisedMin: number
  /** After this the topper no longer takes; null: no limit. */
  readonly maxMin: number | null
  /** The toppers the maker allows on this coating, by product id. */
  readonly productIds: readonly string[]
}

/** The windows that something laid over a coat has to keep. */
export const windowNames = ['recoat', 'topper'] as const
export type WindowName = (typeof windowNames)[number]

/** A data sheet's window while the coat is between two temperatures, both included. */
export interface WindowRow {
  readonly window: WindowName
  readonly fromC: number
  readonly toC: number
  readonly minMin: number
  /** Null where the window never closes. */
  readonly maxMin: number | null
}

/**
 * How the speed of cure follows temperature. `arrhenius`: activation energy over the gas constant, in kelvin.
 * `doubling`: twice as fast for each 10 °C, a rule of thumb. `linear`: in proportion to the degrees above a datum,
 * where a sheet counts degree-hours.
 */
export type RateRule =
  | { readonly rule: 'arrhenius'; readonly activationOverRK: number }
  | { readonly rule: 'doubling' }
  | { readonly rule: 'linear'; readonly datumC: number }

/** A panel kept at `panelC` or hotter for `minutes` has then cured as if `standsForMin` had passed. */
export interface ForcedCureRow {
  readonly panelC: number
  readonly minutes: number
  readonly standsForMin: number
}

/** The figures of a profile that carry a source. */
export const figures = [
  'tackFreeMin',
  'recoat',
  'handoverMin',
  'handoverAdvisedMin',
  'keepDryMin',
  'firstWashMin',
  'firstPeriod',
  'fullCure',
  'temperature',
  'humidity',
  'rate',
] as const satisfies readonly (keyof CureProfile)[]
export type Figure = (typeof figures)[number]
