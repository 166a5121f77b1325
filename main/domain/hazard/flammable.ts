import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { normaliseCode, type Regime } from './regime.ts'

/** Codes whose volume counts as flammable liquid, most dangerous first. */
const liquids = ['H224', 'H225', 'H226', 'H227'] as const
const aerosols = ['H222', 'H223']

export type FlammableCode = (typeof liquids)[number]

export interface StockedVolume {
  readonly id: string
  /** On hand, at least 0. */
  readonly volumeMl: number
  /** Hazard codes of the data sheet; null where it is silent or missing. */
  readonly codes: readonly string[] | null
}

export interface FlammableStock {
  /** Flammable liquid on the shelf, and of each code. */
  readonly totalMl: number
  readonly byCode: Readonly<Record<FlammableCode, number>>
  /** Category 4 (H227) where the rules do not count it as flammable; not in the total. */
  readonly combustibleMl: number
  /** Flammable aerosols, which many codes limit apart; not in the total. */
  readonly aerosolMl: number
  /** Products that could not be counted because their data sheet is silent, and their volume. */
  readonly silentIds: readonly string[]
  readonly silentMl: number
  readonly limitMl: number | null
  /** Total over limit; null without a limit. */
  readonly share: number | null
  /** `near` from nine tenths of the limit on. */
  readonly state: 'no limit' | 'within' | 'near' | 'over'
  readonly message: string
}

/**
 * Flammable liquid on the shelf (H224, H225, H226) against the limit the owner entered from the local code. Category 4
 * (H227, flash point over 60 up to 93 °C) counts under the US rules: 29 CFR 1910.106(a)(19)(iv) calls it a flammable
 * liquid; elsewhere it is told apart. No limit is built in: they differ by place, cabinet and building. `show` writes a
 * volume in the shop's units.
 */
export function flammableStock(
  products: readonly StockedVolume[],
  limitMl: number | null,
  show: (volumeMl: number) => string,
  regime: Regime,
): FlammableStock {
  const said = (volumeMl: number) => (Number.isFinite(volumeMl) ? show(volumeMl) : String(volumeMl))
  if (limitMl !== null && !(limitMl > 0 && Number.isFinite(limitMl)))
    refuse(
      'limit-not-positive',
      { limitMl },
      say('A limit of {limit} is none; enter the volume your local code allows, or leave it empty.', {
        limit: said(limitMl),
      }),
    )
  const byCode = { H224: 0, H225: 0, H226: 0, H227: 0 }
  let aerosolMl = 0
  let silentMl = 0
  const silentIds: string[] = []
  products.forEach(({ id, volumeMl, codes }, i) => {
    if (!(volumeMl >= 0 && Number.isFinite(volumeMl)))
      refuse(
        'volume-negative',
        { [`products.${i}.volumeMl`]: volumeMl },
        say('{volume} cannot stand on a shelf; count the stock again.', { volume: said(volumeMl) }),
      )
    const known = codes?.flatMap(code => normaliseCode(code).split('+'))
    const liquid = liquids.find(code => known?.includes(code))
    if (!known) {
      silentMl += volumeMl
      silentIds.push(id)
    } else if (liquid) byCode[liquid] += volumeMl
    else if (aerosols.some(code => known.includes(code))) aerosolMl += volumeMl
  })
  const counted = regime === 'us-osha'
  const totalMl = byCode.H224 + byCode.H225 + byCode.H226 + (counted ? byCode.H227 : 0)
  const combustibleMl = counted ? 0 : byCode.H227
  const share = limitMl === null ? null : totalMl / limitMl
  const state = share === null ? 'no limit' : share > 1 ? 'over' : share >= 0.9 ? 'near' : 'within'
  const sentences = [
    state === 'no limit' || limitMl === null
      ? say('{totalMl} of flammable liquid on the shelf. Enter the limit your local code sets.', {
          totalMl: show(totalMl),
        })
      : say(stateWords[state], {
          totalMl: show(totalMl),
          limitMl: show(limitMl),
        }),
    combustibleMl > 0 &&
      say('Beside it {combustibleMl} of combustible liquid (H227), not counted here.', {
        combustibleMl: show(combustibleMl),
      }),
    silentIds.length > 0 &&
      say(
        'Not counted: {silentMl} in {silentIds, plural, one {one product} other {{silentIds} products}} whose data sheet is silent or missing.',
        { silentMl: show(silentMl), silentIds: silentIds.length },
      ),
    limitMl !== null && say('The local code decides.'),
  ]
  return {
    totalMl,
    byCode,
    combustibleMl,
    aerosolMl,
    silentIds,
    silentMl,
    limitMl,
    share,
    state,
    message: sentences.filter(Boolean).join(' '),
  }
}

const stateWords = {
  within: word('{totalMl} of flammable liquid on the shelf, within your limit of {limitMl}.'),
  near: word('{totalMl} of flammable liquid on the shelf, close to your limit of {limitMl}.'),
  over: word('{totalMl} of flammable liquid on the shelf, over your limit of {limitMl}.'),
}
