/**
 * The two clocks of a window. What opens it runs slow: cold lengthens it, and heat shortens it only by a row of the
 * data sheet. What closes it runs fast: heat shortens it by the same law, and cold keeps it open longer only by a row.
 * Both begin when the layer was begun, so that the age of a panel done early can be told from that of the last.
 */
import { type CureClock, clockOver, heated } from './clock.ts'
import { type HeatCredit, type Heating, heatCredit } from './heating.ts'
import type { CureProfile, WindowName, WindowRow } from './profile.ts'
import { ageOver, neverFaster, neverSlower, type Rate, rateOf, withRows } from './rate.ts'
import { type Stretches, stretchesFrom } from './stretches.ts'
import { type BayTemperatures, temperatureStretches } from './temperatures.ts'

export interface WindowClock {
  readonly opens: CureClock
  readonly closes: CureClock
}

/** From when to when a layer was laid. */
export interface Laying {
  readonly fromAt: number
  readonly toAt: number
}

/** The clocks of one window of a layer laid in a bay with these temperatures; null where the sheet names no such window. */
export function windowClock(
  profile: CureProfile,
  name: WindowName,
  laying: Laying,
  temperatures: BayTemperatures,
  heatings: readonly Heating[] = [],
): WindowClock | null {
  const figures = profile[name]
  if (!figures) return null
  const { referenceC } = profile
  const rate = rateOf(profile.rate, referenceC)
  const rows = profile.windowRows.filter(row => row.window === name)
  const speeds = (of: (row: WindowRow) => number) => rows.map(row => ({ ...row, speed: of(row) }))
  const credit = heatCredit(profile, laying.toAt, heatings)

  const slow = withRows(
    neverFaster(rate, referenceC),
    speeds(row => figures.minMin / row.minMin),
  )
  const cold = temperatureStretches(laying.fromAt, temperatures)
  const opens = credit ? clockOver(heated(cold, credit, referenceC), slow, credit) : clockOver(cold, slow)

  const fast = withRows(
    neverSlower(rate, referenceC),
    speeds(row => (figures.maxMin === null || row.maxMin === null ? 1 : figures.maxMin / row.maxMin)),
  )
  const hot = underLamps(temperatureStretches(laying.fromAt, temperatures, 'hottest'), heatings)
  return { opens, closes: clockOver(hot, fast, credit && beyondRate(credit, fast, heatings)) }
}

/** The stretches with every heated time at its panel temperature, whether a row of the sheet counts it or not. */
function underLamps(stretches: Stretches, heatings: readonly Heating[]): Stretches {
  if (heatings.length === 0) return stretches
  const marks = heatings.flatMap(({ fromAt, toAt }) => [fromAt, toAt]).sort((a, b) => a - b)
  const cut = stretchesFrom(stretches.fromAt, stretches.count() + marks.length)
  for (let i = 0; i < stretches.count(); i++)
    for (const mark of [...marks, stretches.to(i)]) {
      const from = cut.endAt()
      const to = Math.min(mark, stretches.to(i))
      const panels = heatings
        .filter(({ fromAt, toAt }) => fromAt <= from && to <= toAt)
        .map(({ panelC }) => panelC)
      const celsiusAt = (at: number) => Math.max(stretches.celsiusAt(i, at), ...panels)
      cut.add(to, celsiusAt(from), celsiusAt(to), stretches.part(i))
    }
  return cut
}

/** What a row of the sheet says a heated cure stands for beyond what the hot panel has aged by the rate already. */
function beyondRate(credit: HeatCredit, rate: Rate, heatings: readonly Heating[]): HeatCredit {
  const { panelC = 0 } = heatings.find(({ fromAt, toAt }) => fromAt <= credit.from && credit.to <= toAt) ?? {}
  const minutes = credit.to - credit.from
  const aged = ageOver(rate, minutes, panelC, panelC) - minutes
  return { ...credit, gainMin: Math.max(0, credit.gainMin - aged) }
}
