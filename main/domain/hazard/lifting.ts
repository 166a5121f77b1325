import { Refusal } from '../refusal.ts'

export interface Lift {
  /** Hands to the middle between the ankles, at the start of the lift. */
  readonly horizontalCm: number
  /** Hands above the floor. */
  readonly verticalCm: number
  /** How far up or down the load goes. */
  readonly travelCm: number
  /** How far the body turns, degrees. */
  readonly asymmetryDeg: number
  /** From the NIOSH tables, above 0 to 1: how often and how long, and how well the load is held. */
  readonly frequencyMultiplier: number
  readonly couplingMultiplier: number
  readonly loadKg: number
}

export interface LiftAdvice {
  readonly hm: number
  readonly vm: number
  readonly dm: number
  readonly am: number
  readonly recommendedWeightLimitKg: number
  /** Load over limit: above 1 the risk rises. Null where nothing should be lifted that way at all. */
  readonly liftingIndex: number | null
}

/** Load constant of the revised NIOSH equation, kg. */
const loadConstantKg = 23

/** Horizontal multiplier: 25 / H, 1 within 25 cm, 0 beyond 63 cm. */
export function horizontalMultiplier(horizontalCm: number): number {
  if (horizontalCm > 63) return 0
  return horizontalCm <= 25 ? 1 : 25 / horizontalCm
}

/** Vertical multiplier: 1 − 0.003 |V − 75|, 0 above 175 cm. */
export function verticalMultiplier(verticalCm: number): number {
  return verticalCm > 175 ? 0 : 1 - 0.003 * Math.abs(verticalCm - 75)
}

/** Distance multiplier: 0.82 + 4.5 / D, 1 within 25 cm, 0 beyond 175 cm. */
export function distanceMultiplier(travelCm: number): number {
  if (travelCm > 175) return 0
  return travelCm <= 25 ? 1 : 0.82 + 4.5 / travelCm
}

/** Asymmetry multiplier: 1 − 0.0032 A, 0 beyond 135 degrees. */
export function asymmetryMultiplier(asymmetryDeg: number): number {
  return asymmetryDeg > 135 ? 0 : 1 - 0.0032 * asymmetryDeg
}

/**
 * The weight NIOSH recommends as the most for a lift, for drums and machines: LC · HM · VM · DM · AM · FM · CM. Advice for
 * healthy adults, two hands, good footing; local rules and the person decide.
 * Source: Applications manual for the revised NIOSH lifting equation, DHHS (NIOSH) Publication 94-110.
 */
export function liftAdvice(lift: Lift): LiftAdvice {
  for (const [field, value] of Object.entries(lift)) {
    const share = field.endsWith('Multiplier')
    if (!(value >= 0 && value <= (share ? 1 : 1000)))
      throw new Refusal(
        'lift-out-of-range',
        field,
        value,
        `${value} is not a measure of a lift; give ${share ? 'a multiplier from 0 to 1' : 'a number from 0 to 1000'}.`,
      )
  }
  const hm = horizontalMultiplier(lift.horizontalCm)
  const vm = verticalMultiplier(lift.verticalCm)
  const dm = distanceMultiplier(lift.travelCm)
  const am = asymmetryMultiplier(lift.asymmetryDeg)
  const recommendedWeightLimitKg =
    loadConstantKg * hm * vm * dm * am * lift.frequencyMultiplier * lift.couplingMultiplier
  const liftingIndex = recommendedWeightLimitKg > 0 ? lift.loadKg / recommendedWeightLimitKg : null
  return { hm, vm, dm, am, recommendedWeightLimitKg, liftingIndex }
}
