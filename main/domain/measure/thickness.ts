/** Paint thickness panel by panel: what is typical, what stands out, and what correction it leaves room for. */
import { say, unitsNow } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { median } from './median.ts'
import { momentsOf } from './moments.ts'
import { checkNumber } from './numbers.ts'
import { farOut, medianDeviation, robustSpread } from './robust.ts'
import { takenOffWords, thicknessWords } from './thicknessWords.ts'

/** One reading of the gauge at one spot of a panel; a spot read three times has three. */
export interface ThicknessReading {
  readonly panel: string
  /** 1 and up. */
  readonly spot: number
  readonly um: number
}

/** Figures the judgement rests on, micrometres. All common practice, no source: paints and their makers differ. */
export const usualThickness = {
  /** Under it no correction without a reason. */
  floorUm: 80,
  /** A factory coat is rarely thicker. */
  factoryMostUm: 180,
  /** A panel this much over the rest of its car was painted again. */
  overRestUm: 40,
  /** Paint alone is rarely this thick: there is filler beneath. */
  fillerUm: 500,
  /** What a gauge may be off by, taken off the budget. */
  gaugeUm: 3,
  /** Most that may go of a sound clear coat in all its life: its outer part keeps the light off the rest. */
  mostTakenUm: 10,
} as const
export type ThicknessRules = { readonly [Name in keyof typeof usualThickness]: number }

export interface PanelThickness {
  readonly panel: string
  readonly readings: number
  /** The mean of each spot’s readings, in order of spot (SSPC-PA 2 judges spots, not single readings). */
  readonly spots: readonly { readonly spot: number; readonly um: number }[]
  readonly leastUm: number
  readonly mostUm: number
  readonly typicalUm: number
  readonly meanUm: number
  readonly sdUm: number
  readonly madUm: number
  /** Readings that are not like the rest of the panel: an edge, a slipped probe, or filler. */
  readonly farOutUm: readonly number[]
  readonly verdict: 'as built' | 'likely repainted' | 'likely filler'
  /** Why; null where nothing stands out. */
  readonly reason: string | null
  readonly belowFloor: boolean
  /** An estimate: how much correction may take off here. No gauge tells the clear coat from what lies beneath. */
  readonly budgetUm: number
}

export interface CarThickness {
  readonly panels: readonly PanelThickness[]
  /** The middle of the panels; null without readings. */
  readonly typicalUm: number | null
  readonly leastUm: number | null
}

/** Refuses what no paint is. A gauge reads to a few millimetres. */
export function checkThickness(um: number, field: string): number {
  if (!(checkNumber(um, field) > 0 && um <= 5_000))
    refuse(
      'thickness-bad',
      { [field]: um },
      say('{thickness} is no paint; give {least} to {most}.', {
        thickness: takenOffWords(um, unitsNow()),
        least: takenOffWords(1, unitsNow()),
        most: thicknessWords(5_000, unitsNow()),
      }),
    )
  return um
}

/** How a thickness is said in the reasons. */
type ShownUm = (um: number) => string

/**
 * Every panel with readings, in the order they were first read. Outliers by the modified score of Iglewicz and Hoaglin
 * (NIST/SEMATECH e-Handbook 1.3.5.17). What lies beneath is a likelihood with its reason, the budget an estimate.
 */
export function carThickness(
  readings: readonly ThicknessReading[],
  rules: ThicknessRules = usualThickness,
  shown: ShownUm = um => thicknessWords(um, unitsNow()),
): CarThickness {
  for (const [i, { um }] of readings.entries()) checkThickness(um, `readings.${i}.um`)
  const byPanel = Map.groupBy(readings, ({ panel }) => panel)
  const typical = new Map([...byPanel].map(([panel, own]) => [panel, median(own.map(({ um }) => um))]))
  const panels = [...byPanel].map(([panel, own]) => panelThickness(panel, own, typical, { rules, shown }))
  return {
    panels,
    typicalUm: panels.length === 0 ? null : median([...typical.values()]),
    leastUm: panels.length === 0 ? null : Math.min(...panels.map(({ leastUm }) => leastUm)),
  }
}

function panelThickness(
  panel: string,
  own: readonly ThicknessReading[],
  typical: ReadonlyMap<string, number>,
  { rules, shown }: { rules: ThicknessRules; shown: ShownUm },
): PanelThickness {
  const values = own.map(({ um }) => um)
  const bySpot = Map.groupBy(own, ({ spot }) => spot)
  const spots = [...bySpot]
    .map(([spot, at]) => ({ spot, um: momentsOf(at.map(({ um }) => um)).mean }))
    .sort((a, b) => a.spot - b.spot)
  const { mean, sd } = momentsOf(values)
  const wild = farOut(values)
  const leastUm = Math.min(...spots.map(({ um }) => um))
  const mostUm = Math.max(...spots.map(({ um }) => um))
  const typicalUm = median(values)
  const rest = [...typical].filter(([other]) => other !== panel).map(([, um]) => um)
  const room = leastUm - rules.floorUm - rules.gaugeUm
  return {
    panel,
    readings: values.length,
    spots,
    leastUm,
    mostUm,
    typicalUm,
    meanUm: mean,
    sdUm: sd,
    madUm: medianDeviation(values),
    farOutUm: values.filter((_, i) => wild[i]),
    ...beneath({ typicalUm, mostUm, rest }, rules, shown),
    belowFloor: leastUm < rules.floorUm,
    budgetUm: Math.min(rules.mostTakenUm, Math.max(0, room)),
  }
}

/** What probably lies under the surface. The rest of the car is the better yardstick where three panels of it are read. */
function beneath(
  { typicalUm, mostUm, rest }: { typicalUm: number; mostUm: number; rest: readonly number[] },
  rules: ThicknessRules,
  shown: ShownUm,
): Pick<PanelThickness, 'verdict' | 'reason'> {
  if (mostUm >= rules.fillerUm)
    return {
      verdict: 'likely filler',
      reason: say('{mostUm} at its thickest; paint alone is rarely over {fillerUm}.', {
        mostUm: shown(mostUm),
        fillerUm: shown(rules.fillerUm),
      }),
    }
  const middle = median(rest)
  const over = typicalUm - middle
  // Three panels say little of their spread, so a plain distance has to be passed as well as the score.
  if (rest.length >= 3 && over >= rules.overRestUm && over > 3.5 * robustSpread(rest))
    return {
      verdict: 'likely repainted',
      reason: say('{typicalUm}, where the rest of the car is about {middle}.', {
        typicalUm: shown(typicalUm),
        middle: shown(middle),
      }),
    }
  if (typicalUm > rules.factoryMostUm)
    return {
      verdict: 'likely repainted',
      reason: say('{typicalUm}; a factory coat is rarely over {factoryMostUm}.', {
        typicalUm: shown(typicalUm),
        factoryMostUm: shown(rules.factoryMostUm),
      }),
    }
  return { verdict: 'as built', reason: null }
}
