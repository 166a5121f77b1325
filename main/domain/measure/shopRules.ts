/** The figures a shop judges its readings by, where it set others than are usual. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { usualGloss } from './glossSet.ts'
import { type ThicknessRules, usualThickness } from './thickness.ts'

/** Null: as is usual. */
export interface MeasureSettings {
  /** Thinnest paint that is corrected without a reason, micrometres. */
  readonly floorUm: number | null
  /** Standard deviation of a thickness gauge repeating one spot, micrometres. */
  readonly gaugeRepeatabilityUm: number | null
  /** How far a gloss meter may be off its tile, and drift on it, gloss units. */
  readonly glossAllowedGu: number | null
  /** Standard deviation of a gloss meter repeating one spot, gloss units. */
  readonly glossRepeatabilityGu: number | null
}

export interface MeasureRules {
  readonly thickness: ThicknessRules
  readonly gaugeRepeatabilityUm: number
  readonly glossAllowedGu: number
  readonly glossRepeatabilityGu: number
}

/** What gauges are usually said to repeat to, micrometres; the gauge’s own sheet decides. Common practice, no source. */
const usualGaugeUm = 1

/** The usual figures, common practice all of them, with the shop's own in their place. */
export function measureRules(settings: MeasureSettings | null = null): MeasureRules {
  return {
    thickness: { ...usualThickness, floorUm: settings?.floorUm ?? usualThickness.floorUm },
    gaugeRepeatabilityUm: settings?.gaugeRepeatabilityUm ?? usualGaugeUm,
    glossAllowedGu: settings?.glossAllowedGu ?? usualGloss.allowedGu,
    glossRepeatabilityGu: settings?.glossRepeatabilityGu ?? usualGloss.repeatabilityGu,
  }
}

/** What each may be; a floor under 40 µm is bare of any clear coat worth the name, over 300 no factory car would pass. */
const ranges = {
  floorUm: [40, 300],
  gaugeRepeatabilityUm: [0.1, 20],
  glossAllowedGu: [0.1, 10],
  glossRepeatabilityGu: [0.05, 10],
} as const satisfies Record<keyof MeasureSettings, readonly [number, number]>

/** Refuses a figure no shop judges by. @throws Refusal `out-of-range` naming the field. */
export function checkMeasureSettings(settings: MeasureSettings): void {
  for (const [field, [least, most]] of Object.entries(ranges)) {
    const value = settings[field as keyof MeasureSettings]
    if (value !== null && !(value >= least && value <= most))
      refuse(
        'out-of-range',
        { [field]: value },
        say('Give {least} to {most}, or leave it empty.', { least, most }),
      )
  }
}
