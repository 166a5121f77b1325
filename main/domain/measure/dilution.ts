import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { convert } from './units.ts'

/**
 * What "1:10" means: one part of concentrate *added* to ten parts of water (a share of 1/11), or one part *in ten in
 * total* (a share of 1/10). The first is the usual reading on chemical labels (common practice, no source); the label
 * decides, so that callers always say which.
 */
export type RatioReading = 'added' | 'inTotal'

/** Concentrate first, as labels write it. */
export interface DilutionRatio {
  readonly concentrateParts: number
  readonly otherParts: number
}

export interface Mixture {
  readonly concentrateMl: number
  readonly waterMl: number
  readonly totalMl: number
}

/** Reads "1:10" or "1 : 2.5", concentrate first; both parts above zero. */
export function readRatio(text: string, field = 'ratio'): DilutionRatio {
  const match = /^\s*(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)\s*$/.exec(text)
  const concentrateParts = Number(match?.[1])
  const otherParts = Number(match?.[2])
  if (!(concentrateParts > 0) || !(otherParts > 0))
    refuse(
      'ratio-bad',
      { [field]: text },
      say('"{text}" is not a dilution; write the concentrate first, such as 1:10.', { text }),
    )
  return { concentrateParts, otherParts }
}

/** Concentrate as a share of the mixture, above 0 and at most 1. */
export function concentrateShare(ratio: DilutionRatio, reading: RatioReading): number {
  const { concentrateParts, otherParts } = ratio
  if (reading === 'added') return concentrateParts / (concentrateParts + otherParts)
  if (concentrateParts > otherParts)
    refuse(
      'ratio-over-whole',
      { ratio: `${concentrateParts}:${otherParts}` },
      say(
        '{concentrateParts} parts cannot be in {otherParts} in total; read the ratio as parts added to water.',
        { concentrateParts, otherParts },
      ),
    )
  return concentrateParts / otherParts
}

/** How much of each makes so much mixture. Neglects that some liquids shrink a little when mixed. */
export function mixTotal(ratio: DilutionRatio, totalMl: number, reading: RatioReading): Mixture {
  const concentrateMl = checkVolume(totalMl, 'totalMl') * concentrateShare(ratio, reading)
  return { concentrateMl, waterMl: totalMl - concentrateMl, totalMl }
}

/** How far so much concentrate goes: the water to add and what it makes. */
export function mixFromConcentrate(
  ratio: DilutionRatio,
  concentrateMl: number,
  reading: RatioReading,
): Mixture {
  const totalMl = checkVolume(concentrateMl, 'concentrateMl') / concentrateShare(ratio, reading)
  return { concentrateMl, waterMl: totalMl - concentrateMl, totalMl }
}

/** The ratio and share somebody mixed: concentrate poured into water. Water must be above zero. */
export function ratioMixed(
  concentrateMl: number,
  waterMl: number,
): { addedRatio: string; concentrateFraction: number } {
  checkVolume(concentrateMl, 'concentrateMl')
  checkVolume(waterMl, 'waterMl')
  const parts = Number((waterMl / concentrateMl).toPrecision(4))
  return { addedRatio: `1:${parts}`, concentrateFraction: concentrateMl / (concentrateMl + waterMl) }
}

/** The same for a label that says "ounces per gallon", in US fluid ounces of concentrate to US gallons of water. */
export function ratioOfOuncesPerGallon(
  concentrateFlOz: number,
  waterGallons: number,
): { addedRatio: string; concentrateFraction: number } {
  return ratioMixed(
    convert(concentrateFlOz, 'US fluid ounce', 'mL'),
    convert(waterGallons, 'US gallon', 'mL'),
  )
}

function checkVolume(volumeMl: number, field: string): number {
  if (!(volumeMl > 0) || !Number.isFinite(volumeMl))
    refuse(
      'volume-not-positive',
      { [field]: volumeMl },
      say('{volumeMl} mL is nothing to mix; give a volume above 0.', { volumeMl }),
    )
  return volumeMl
}
