/** Whether a film of a given build was laid as it should be: a respray or a wrap with a thickness it was ordered in. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { meanOf } from './moments.ts'
import { checkNumbers, checkPositive } from './numbers.ts'

/** The least and most a spot may be where a film is to lie between two figures: 80 % and 120 % of them (SSPC-PA 2). */
export function spotLimits(least: number, most: number): { least: number; most: number } {
  checkPositive(least, 'least', say('The least thickness'))
  if (!(most >= least))
    refuse(
      'range-bad',
      { most },
      say('{most} is under {least}; give the larger figure second.', { most, least }),
    )
  return { least: 0.8 * least, most: 1.2 * most }
}

export interface AreaVerdict {
  readonly spots: readonly number[]
  readonly areaMean: number
  readonly spotsPass: boolean
  readonly areaPass: boolean
}

/**
 * An area of several spots, each read several times: single readings may lie anywhere, each spot’s mean within the spot
 * limits, the mean of the spots within the range itself (SSPC-PA 2).
 * @throws Refusal `too-few` where the area or a spot has no reading.
 */
export function judgeArea(
  spotReadings: readonly (readonly number[])[],
  least: number,
  most: number,
): AreaVerdict {
  if (spotReadings.length === 0)
    refuse('too-few', { spotReadings }, say('An area has at least one spot; read one.'))
  const limits = spotLimits(least, most)
  const spots = spotReadings.map(readings => meanOf(readings))
  const areaMean = meanOf(spots)
  return {
    spots,
    areaMean,
    spotsPass: spots.every(um => um >= limits.least - slack && um <= limits.most + slack),
    areaPass: areaMean >= least - slack && areaMean <= most + slack,
  }
}

/** A mean that lies on a limit passes, whatever binary fractions make of it. */
const slack = 1e-9

export interface NominalVerdict {
  readonly mean: number
  readonly allAtLeast80Percent: boolean
  /** Share of the readings under the nominal thickness. */
  readonly belowNominalShare: number
  readonly accepted: boolean
}

/**
 * Readings against a nominal thickness: their mean at least that, none under 80 % of it, at most a fifth under it
 * (ISO 19840, from memory). @throws Refusal `too-few` without readings, `not-positive` for a nominal of 0 or less.
 */
export function judgeNominal(readings: readonly number[], nominal: number): NominalVerdict {
  checkNumbers(readings, 'readings')
  checkPositive(nominal, 'nominal', say('The nominal thickness'))
  const mean = meanOf(readings)
  const allAtLeast80Percent = readings.every(um => um >= 0.8 * nominal - slack)
  const belowNominalShare = readings.filter(um => um < nominal).length / readings.length
  return {
    mean,
    allAtLeast80Percent,
    belowNominalShare,
    accepted: mean >= nominal - slack && allAtLeast80Percent && belowNominalShare <= 0.2 + slack,
  }
}
