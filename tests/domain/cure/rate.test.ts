/**
 * Equivalent age after ASTM C1074 (formula from memory in the first file, seen quoted in the second) and EN 1992-1-1
 * annex B; the doubling rule is common practice, no source. Each case in the two files names its source.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clockOver } from '../../../main/domain/cure/clock.ts'
import { ageOver, minutesTo, neverFaster, type Rate, rateOf } from '../../../main/domain/cure/rate.ts'
import { stretchesFrom } from '../../../main/domain/cure/stretches.ts'
import { expectNear } from '../../reference/cases.ts'
import first from '../../reference/maturity.json' with { type: 'json' }
import second from '../../reference/sourced/maturity.json' with { type: 'json' }
import { rules } from './profiles.ts'

interface Piece {
  hours: number
  celsius: number
}
interface Case {
  id: string
  // biome-ignore lint/suspicious/noExplicitAny: every kind of case has its own shape
  input: any
  // biome-ignore lint/suspicious/noExplicitAny: see above
  expected: any
  tolerance: string
}

const arrhenius = (q: number, referenceC: number) =>
  rateOf({ rule: 'arrhenius', activationOverRK: q }, referenceC)

/** The clock over steady pieces, ending in one without an end. */
function clockOf(history: readonly Piece[], rate: Rate, thenC = 20) {
  const log = stretchesFrom(0, history.length + 1)
  for (const { hours, celsius } of history) log.add(log.endAt() + hours * 60, celsius, celsius, 'measured')
  log.add(Number.POSITIVE_INFINITY, thenC, thenC, 'projected')
  return clockOver(log, rate)
}
const hoursOf = (history: readonly Piece[], rate: Rate) =>
  clockOf(history, rate).ageAt(history.reduce((sum, { hours }) => sum + hours * 60, 0)) / 60

const kinds: Record<string, (input: Case['input'], expected: Case['expected']) => Record<string, number>> = {
  'equivalent-age': ({ history, activationOverR_K, QKelvin, referenceC }) => ({
    equivalentHours: hoursOf(history, arrhenius(activationOverR_K ?? QKelvin, referenceC)),
    at23C: hoursOf(history, arrhenius(activationOverR_K ?? QKelvin, 23)),
  }),
  doubling: ({ history, referenceC }) => ({
    equivalentHours: hoursOf(history, rateOf({ rule: 'doubling' }, referenceC)),
  }),
  // The temperature-time factor is the linear rule's age times the degrees of the reference over the datum.
  'temperature-time-factor': ({ history, datumC }) => ({
    degreeHours: hoursOf(history, rateOf({ rule: 'linear', datumC }, 20)) * (20 - datumC),
  }),
  'rate-ratio': ({ celsius, referenceC, QKelvin }) => ({
    ratio: arrhenius(QKelvin, referenceC).of(celsius),
    doublingRatio: rateOf({ rule: 'doubling' }, referenceC).of(celsius),
  }),
  'equivalent-age-joules': ({ history, activationEnergyJPerMol, gasConstant, referenceC }) => ({
    equivalentHours: hoursOf(history, arrhenius(activationEnergyJPerMol / gasConstant, referenceC)),
  }),
  // EN 1992-1-1 (B.10) rounds 273.15 to 273, so its rate is not quite 1 at 20 °C; the same integral carries it.
  'equivalent-age-en1992': ({ history }) => ({
    equivalentHours: hoursOf(history, {
      of: c => Math.exp(13.65 - 4000 / (273 + c)),
      kinks: [],
      steepness: 0.1,
    }),
  }),
  ramp: ({ fromC, toC, hours, QKelvin, referenceC }) => ({
    equivalentHours: ageOver(arrhenius(QKelvin, referenceC), hours * 60, fromC, toC) / 60,
  }),
  'hours-to-reach': ({ equivalentHoursNeeded, celsius, referenceC, QKelvin }) => ({
    hours: clockOf([], arrhenius(QKelvin, referenceC), celsius).reachedAt(equivalentHoursNeeded * 60)! / 60,
  }),
  'remaining-time': ({ history, thenCelsius, equivalentHoursNeeded, QKelvin, referenceC }) => {
    const clock = clockOf(history, arrhenius(QKelvin, referenceC), thenCelsius)
    const nowAt = 600
    return {
      equivalentHoursSoFar: clock.ageAt(nowAt) / 60,
      hoursLeft: (clock.reachedAt(equivalentHoursNeeded * 60)! - nowAt) / 60,
    }
  },
  'equivalent-age-pieces': ({ a, b, QKelvin, referenceC }) => {
    const rate = arrhenius(QKelvin, referenceC)
    expect(hoursOf(a, rate) / hoursOf(b, rate)).toBeCloseTo(1, 12)
    return { equivalentHours: hoursOf(a, rate) }
  },
}

function kindOf(given: Case & { kind?: string }) {
  const kind = given.kind ?? given.id.replace(/-\d+$/, '')
  return kind === 'nurse-saul' ? 'temperature-time-factor' : kind
}

describe.each([
  ['maturity.json', first.cases as Case[], 17],
  ['sourced/maturity.json', second.cases as Case[], 25],
])('%s', (_, cases, count) => {
  it('is whole', () => expect(cases).toHaveLength(count))

  it.each(cases.map(given => [given.id, given] as const))('%s', (_, given) => {
    const answer = kinds[kindOf(given)]!(given.input, given.expected)
    const figures = Object.entries<number | boolean>(given.expected).filter(
      (figure): figure is [string, number] => typeof figure[1] === 'number',
    )
    expect(figures.length).toBeGreaterThan(0)
    for (const [name, value] of figures) {
      // That tolerance is for two ways to one figure, held together where they are computed; printed it has eight digits.
      const tolerance = given.tolerance.endsWith('between the two') ? 'relative 5e-8' : given.tolerance
      expectNear(answer[name]!, value, tolerance)
    }
  })
})

const celsius = fc.double({ min: -20, max: 50, noNaN: true })

describe('the age a stretch adds', () => {
  it('is the sum of very small steady steps', () => {
    fc.assert(
      fc.property(rules, fc.boolean(), celsius, celsius, (rule, capped, fromC, toC) => {
        const open = rateOf(rule, 20)
        const rate = capped ? neverFaster(open, 20) : open
        const steps = 20_000
        let sum = 0
        for (let i = 0; i < steps; i++) sum += rate.of(fromC + ((toC - fromC) * (i + 0.5)) / steps) / steps
        const age = ageOver(rate, 100, fromC, toC)
        expect(Math.abs(age - 100 * sum)).toBeLessThanOrEqual(1e-6 * (1 + 100 * sum))
      }),
      { numRuns: 60 },
    )
  })

  it('has a closed form for the doubling rule', () => {
    fc.assert(
      fc.property(celsius, fc.double({ min: 0.01, max: 60, noNaN: true }), (fromC, rise) => {
        const rate = rateOf({ rule: 'doubling' }, 20)
        const toC = fromC + rise
        // The integral of 2^((T - 20) / 10) over a straight line.
        const exact = (100 * (rate.of(toC) - rate.of(fromC))) / ((Math.LN2 * rise) / 10)
        expect(Math.abs(ageOver(rate, 100, fromC, toC) / exact - 1)).toBeLessThan(1e-11)
      }),
    )
  })

  it('is undone by the minutes it takes', () => {
    fc.assert(
      fc.property(
        rules,
        celsius,
        celsius,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (rule, fromC, toC, share) => {
          const rate = neverFaster(rateOf(rule, 20), 20)
          const whole = ageOver(rate, 300, fromC, toC)
          fc.pre(whole > 1e-3)
          const minutes = minutesTo(rate, share * whole, 300, fromC, toC)
          const untilC = fromC + ((toC - fromC) * minutes) / 300
          expect(Math.abs(ageOver(rate, minutes, fromC, untilC) - share * whole)).toBeLessThan(1e-7 * whole)
        },
      ),
    )
  })
})
