/** Gloss: what a reading means, at which angle to read, and which readings may be put together. */

import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { listWords } from '../words.ts'
import { meanOf } from './moments.ts'
import { checkNumber } from './numbers.ts'

/** The angles of a gloss meter from the upright, in degrees. */
export const geometries = [20, 60, 85] as const
export type Geometry = (typeof geometries)[number]

export interface GlossReading {
  readonly geometryDeg: Geometry
  /** Gloss units. */
  readonly gu: number
}

/** The black glass that is 100 gloss units at every angle (ISO 2813:2014, 3.3). */
const glassIndex = 1.567

/**
 * The share of unpolarised light a smooth glass of this index throws back at this angle: the mean of the two Fresnel
 * terms (ISO 2813:1994, note 11).
 * @throws Refusal `index-bad` outside 1 to 4, `angle-bad` outside 0 to 90°.
 */
export function reflectance(refractiveIndex: number, angleDeg: number): number {
  if (!(refractiveIndex >= 1 && refractiveIndex <= 4))
    refuse(
      'index-bad',
      { refractiveIndex },
      say('No glass has an index of {refractiveIndex}; it lies between 1 and 4.', { refractiveIndex }),
    )
  if (!(angleDeg >= 0 && angleDeg < 90))
    refuse(
      'angle-bad',
      { angleDeg },
      say('{angleDeg}° is no angle to read at; use 20, 60 or 85.', { angleDeg }),
    )
  const angle = (angleDeg * Math.PI) / 180
  const [cos, root] = [Math.cos(angle), Math.sqrt(refractiveIndex ** 2 - Math.sin(angle) ** 2)]
  const across = (cos - root) / (cos + root)
  const along = (refractiveIndex ** 2 * cos - root) / (refractiveIndex ** 2 * cos + root)
  return (across ** 2 + along ** 2) / 2
}

/** Gloss units of a smooth glass of this index (ISO 2813:2014, 3.3; ASTM D523). @throws Refusal as `reflectance`. */
export function glossOfIndex(refractiveIndex: number, geometryDeg: Geometry): number {
  return (100 * reflectance(refractiveIndex, geometryDeg)) / reflectance(glassIndex, geometryDeg)
}

/**
 * The angle to read a surface at, from its reading at 60°: 20° above 70 units, 85° below 10, else 60°.
 * Source: ISO 2813:2014, clause 5; ASTM D523-14, 4.1.1 to 4.1.3.
 * @throws Refusal `gloss-bad` for a reading under 0 or over 2,000 units (a mirror reads about 1,000 at 60°, from memory).
 */
export function geometryFor(reading60Gu: number): Geometry {
  checkGloss(reading60Gu, 'reading60Gu')
  if (reading60Gu > 70) return 20
  return reading60Gu < 10 ? 85 : 60
}

/** Refuses what no gloss meter shows. */
export function checkGloss(gu: number, field: string): number {
  if (!(checkNumber(gu, field) >= 0 && gu <= 2_000))
    refuse(
      'gloss-bad',
      { [field]: gu },
      say('{gu} is no gloss reading; give 0 to 2,000 gloss units.', { gu }),
    )
  return gu
}

/** Whether these may be put together at all: one surface reads 35, 70 and 95 at the three angles (ISO 2813:2014, 5). */
export function mayAverage(readings: readonly GlossReading[]): boolean {
  return readings.length > 0 && readings.every(({ geometryDeg }) => geometryDeg === readings[0]!.geometryDeg)
}

/** The mean of readings at one angle. @throws Refusal `geometries-mixed` for several angles, `too-few` for none. */
export function averageGloss(readings: readonly GlossReading[]): { geometryDeg: Geometry; meanGu: number } {
  const [first] = readings
  if (first === undefined) refuse('too-few', { readings }, say('There is no gloss reading yet; take one.'))
  if (!mayAverage(readings)) refuseMixed(readings)
  for (const [i, { gu }] of readings.entries()) checkGloss(gu, `readings.${i}.gu`)
  return { geometryDeg: first.geometryDeg, meanGu: meanOf(readings.map(({ gu }) => gu)) }
}

/** What the surface gained, in gloss units. @throws Refusal `geometries-mixed` where the angles differ. */
export function glossChange(before: GlossReading, after: GlossReading): number {
  if (before.geometryDeg !== after.geometryDeg) refuseMixed([before, after])
  return checkGloss(after.gu, 'after.gu') - checkGloss(before.gu, 'before.gu')
}

function refuseMixed(readings: readonly GlossReading[]): never {
  const angles = listWords([...new Set(readings.map(({ geometryDeg }) => `${geometryDeg}°`))])
  return refuse(
    'geometries-mixed',
    { readings },
    say(
      'Readings at {angles} are different measures (mixed geometries); compare and average those of one angle only.',
      { angles },
    ),
  )
}

export interface TileCheck {
  readonly withinTolerance: boolean
  /** What a reading is multiplied by to be on the tile’s scale; the scale is linear in the light thrown back. */
  readonly scale: number
  /** Read less assigned, gloss units. */
  readonly offGu: number
}

/**
 * A reading of the calibration tile against the figure assigned to it. `allowedGu` is the shop’s or the maker’s.
 * @throws Refusal `tile-bad` where the tile’s figure or the reading is 0 or less.
 */
export function checkTile(assignedGu: number, readGu: number, allowedGu: number): TileCheck {
  for (const [field, gu] of Object.entries({ assignedGu, readGu }))
    if (!(checkGloss(gu, field) > 0))
      refuse(
        'tile-bad',
        { [field]: gu },
        say('A tile reads more than 0 gloss units; clean it and read it again.'),
      )
  const offGu = readGu - assignedGu
  // Decimals such as 94.8 − 93.8 miss by a rounding, and the edge of what is allowed is allowed.
  return { withinTolerance: Math.abs(offGu) <= allowedGu + 1e-9, scale: assignedGu / readGu, offGu }
}
