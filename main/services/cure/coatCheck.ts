/** The conditions a coat is begun in: what was measured, what of the rules it does not meet, and the reason given. */

import {
  type CoatWarning,
  type CureProfile,
  coatConditions,
  leastMarginC,
  usualGapLimitMin,
} from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { degreesWords, marginWords, type UnitSystem } from '../../domain/measure/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { sentence } from '../../domain/words.ts'
import type { ReadingValues } from '../../store/readingRows.ts'
import type { Tx } from '../../store/store.ts'

/** What was measured in a bay shortly before a minute. */
export interface Measured {
  readonly readingAt: number | null
  readonly airC: number | null
  readonly humidityPercent: number | null
  readonly panelC: number | null
}

export interface CoatCheck extends Measured {
  readonly dewC: number | null
  readonly marginC: number | null
  /** In words, each with the rule's source; empty where every rule was met or nothing was measured. */
  readonly warnings: string[]
}

/** The newest value of each kind of the last hour: a hand-held panel reading beside a sensor's air. */
export async function measuredIn(tx: Tx, bayId: string, at: number): Promise<Measured> {
  const rows: ReadingValues[] = await tx.reading.findMany({
    where: { bayId, voidedAt: null, at: { gt: at - usualGapLimitMin, lte: at } },
    orderBy: { at: 'desc' },
  })
  return {
    readingAt: rows[0]?.at ?? null,
    airC: rows[0]?.airC ?? null,
    humidityPercent: rows.find(row => row.humidityPercent !== null)?.humidityPercent ?? null,
    panelC: rows.find(row => row.panelC !== null)?.panelC ?? null,
  }
}

/** Holds what was measured against the profile and the rule of the dew point. */
export function checkCoat(profile: CureProfile, measured: Measured, units: UnitSystem): CoatCheck {
  const { airC, humidityPercent, panelC } = measured
  if (airC === null) return { ...measured, dewC: null, marginC: null, warnings: [] }
  const known = humidityPercent !== null
  const { humidity } = profile
  const found = coatConditions(profile, {
    airC,
    panelC,
    humidityPercent: humidityPercent ?? (humidity.minPercent + humidity.maxPercent) / 2,
  })
  const ofHumidity = new Set<CoatWarning['code']>(['air-dry', 'air-damp', 'dew-margin', 'panel-unmeasured'])
  const warnings = found.warnings.filter(({ code }) => known || !ofHumidity.has(code))
  return {
    ...measured,
    dewC: known ? found.dewC : null,
    marginC: known ? found.marginC : null,
    warnings: [
      ...warnings.map(warning => warningWords(warning, units)),
      ...(known ? [] : [say('The humidity was not measured, so the dew point is not known.')]),
    ],
  }
}

function warningWords({ code, value, limit, source }: CoatWarning, units: UnitSystem): string {
  const degrees = (celsius: number) => degreesWords(celsius, units)
  const from = source === 'ISO 8502-4' ? source : say('the profile ({source})', { source: say(source) })
  if (code === 'panel-unmeasured' || value === null)
    return sentence(
      say(
        'the panel was not measured, so nobody knows that it is {leastMarginC} above the dew point ({from})',
        { leastMarginC: marginWords(leastMarginC, units), from },
      ),
    )
  const words: Record<typeof code, () => string> = {
    'air-cold': () =>
      say('the air is {value}, under the {limit} of {from}', {
        value: degrees(value),
        limit: degrees(limit),
        from,
      }),
    'air-hot': () =>
      say('the air is {value}, over the {limit} of {from}', {
        value: degrees(value),
        limit: degrees(limit),
        from,
      }),
    'panel-cold': () =>
      say('the panel is {value}, under the {limit} of {from}', {
        value: degrees(value),
        limit: degrees(limit),
        from,
      }),
    'panel-hot': () =>
      say('the panel is {value}, over the {limit} of {from}', {
        value: degrees(value),
        limit: degrees(limit),
        from,
      }),
    'air-dry': () =>
      say('the humidity is {value} %, under the {limit} % of {from}', {
        value: Math.round(value),
        limit,
        from,
      }),
    'air-damp': () =>
      say('the humidity is {value} %, over the {limit} % of {from}', {
        value: Math.round(value),
        limit,
        from,
      }),
    'dew-margin': () =>
      say('the panel is only {value} above the dew point, less than the {limit} of {from}', {
        value: marginWords(value, units),
        limit: marginWords(limit, units),
        from,
      }),
  }
  return sentence(words[code]())
}

/**
 * What is kept of a coat step that is begun now. Refused without a reason where a rule is not met; what was not measured
 * at all is kept as such and refuses nothing.
 */
export function reasonedCheck(check: CoatCheck, reason: string): { check: CoatCheck; reason: string } {
  if (check.warnings.length > 0 && reason === '')
    throw new Refusal(
      'conditions',
      'reason',
      check.warnings,
      say(
        '{warnings} The data sheet decides; beginning all the same needs a reason, which is kept and printed.',
        { warnings: check.warnings.join(' ') },
      ),
    )
  return { check, reason }
}

export interface KeptCheck {
  jobId: string
  position: number
  at: number
  who: string
  productName: string
  check: CoatCheck
  reason: string
}

export async function keepCheck(tx: Tx, { check, ...kept }: KeptCheck): Promise<void> {
  const { warnings, ...values } = check
  await tx.conditionCheck.create({ data: { ...kept, ...values, warnings } })
}

/** A kept check in a line, as it is shown and printed. */
export function checkWords(check: CoatCheck & { reason: string }, units: UnitSystem): string {
  const { airC, humidityPercent, panelC, dewC, marginC } = check
  if (airC === null) return say('Not measured in the hour before.')
  const parts = [
    say('air {airC}', { airC: degreesWords(airC, units) }),
    humidityPercent === null
      ? ''
      : say('{humidityPercent} % humidity', { humidityPercent: Math.round(humidityPercent) }),
    dewC === null ? '' : say('dew point {dewC}', { dewC: degreesWords(dewC, units) }),
    panelC === null
      ? say('panel not measured')
      : say('panel {panelC}', { panelC: degreesWords(panelC, units) }),
    marginC === null ? '' : say('{marginC} above the dew point', { marginC: marginWords(marginC, units) }),
  ]
  const met =
    check.warnings.length === 0
      ? [say('Every rule entered for it was met; the data sheet decides.')]
      : check.warnings
  const because =
    check.reason === '' ? [] : [say('Started anyway: {reason}', { reason: sentence(check.reason) })]
  return [sentence(parts.filter(Boolean).join(', ')), ...met, ...because].join(' ')
}
