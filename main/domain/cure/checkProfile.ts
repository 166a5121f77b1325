/** What a cure profile may not say. Each refusal names the field and what would do instead. */
import { say } from '../language/index.ts'
import { degreesWords, type UnitSystem } from '../measure/index.ts'
import { refuse } from '../refusal.ts'
import { advisedByPracticeMin, leastByPracticeMin } from './commonPractice.ts'
import { type CureProfile, windowNames } from './profile.ts'

const longestMin = 365 * 24 * 60

/**
 * Refuses a profile that cannot be true or that is not safe to plan by: a duration that is negative or not whole, a
 * minimum past its maximum, full cure before handover, a handover before 4 h that no data sheet gives.
 * @throws Refusal naming the field, temperatures in the `units` they were typed in.
 */
export function checkProfile(profile: CureProfile, units: UnitSystem = 'metric'): void {
  checkDurations(profile)
  checkOrder(profile)
  checkPractice(profile)
  checkConditions(profile, units)
  checkRate(profile, units)
  checkWindows(profile, units)
  if (profile.recoat && profile.missedRecoat.trim() === '')
    refuse(
      'text-missing',
      { missedRecoat: profile.missedRecoat },
      say('A recoat window is given but not what to do when it is missed; copy what the data sheet asks.'),
    )
}

function checkDurations(profile: CureProfile) {
  for (const field of [
    'tackFreeMin',
    'handoverMin',
    'handoverAdvisedMin',
    'keepDryMin',
    'firstWashMin',
  ] as const)
    checkDuration(profile[field], field)
  const { topper } = profile
  if (topper) {
    checkDuration(topper.minMin, 'topper.minMin')
    checkDuration(topper.advisedMin, 'topper.advisedMin')
    if (topper.maxMin !== null) checkDuration(topper.maxMin, 'topper.maxMin')
  }
  if (profile.recoat) {
    checkDuration(profile.recoat.minMin, 'recoat.minMin')
    checkDuration(profile.recoat.maxMin, 'recoat.maxMin')
  }
  for (const stretch of ['firstPeriod', 'fullCure'] as const) {
    checkDuration(profile[stretch].earlyMin, `${stretch}.earlyMin`)
    checkDuration(profile[stretch].lateMin, `${stretch}.lateMin`)
  }
}

function checkDuration(minutes: number, field: string) {
  if (!Number.isInteger(minutes) || minutes < 0 || minutes > longestMin)
    refuse(
      'duration-bad',
      { [field]: minutes },
      say('{minutes} is not a duration; use whole minutes from 0 to {longestMin} (a year).', {
        minutes,
        longestMin,
      }),
    )
}

function checkOrder(profile: CureProfile) {
  const { recoat, topper, firstPeriod, fullCure } = profile
  if (recoat) notAfter(recoat.minMin, recoat.maxMin, 'recoat.maxMin', say('the recoat window opens'))
  if (topper) notAfter(topper.minMin, topper.advisedMin, 'topper.advisedMin', say('the topper may go on'))
  if (topper && topper.maxMin !== null)
    notAfter(topper.advisedMin, topper.maxMin, 'topper.maxMin', say('the topper is advised'))
  notAfter(profile.tackFreeMin, profile.handoverMin, 'handoverMin', say('the coat is tack-free'))
  notAfter(
    profile.handoverMin,
    profile.handoverAdvisedMin,
    'handoverAdvisedMin',
    say('the earliest pick-up is'),
  )
  notAfter(profile.keepDryMin, profile.firstWashMin, 'firstWashMin', say('the car may get wet'))
  notAfter(firstPeriod.earlyMin, firstPeriod.lateMin, 'firstPeriod.lateMin', say('the early bound'))
  notAfter(fullCure.earlyMin, fullCure.lateMin, 'fullCure.lateMin', say('the early bound'))
  notAfter(
    profile.handoverAdvisedMin,
    fullCure.earlyMin,
    'fullCure.earlyMin',
    say('the recommended pick-up is'),
  )
  for (const bound of ['earlyMin', 'lateMin'] as const)
    notAfter(firstPeriod[bound] + 1, fullCure[bound], `fullCure.${bound}`, say('the first period is over'))
  if (firstPeriod.earlyMin === 0)
    refuse(
      'duration-bad',
      { 'firstPeriod.earlyMin': 0 },
      say('The first period cannot be over at 0 minutes; give it some.'),
    )
  if (!(firstPeriod.degree > 0 && firstPeriod.degree < 1))
    refuse(
      'degree-bad',
      { 'firstPeriod.degree': firstPeriod.degree },
      say('{degree} is not a degree of cure; use more than 0 and less than 1 (0.85 is 85 %).', {
        degree: firstPeriod.degree,
      }),
    )
}

function notAfter(earlier: number, later: number, field: string, what: string) {
  if (later < earlier)
    refuse(
      'order-wrong',
      { [field]: later },
      say('{later} minutes is too early: {what} at {earlier} minutes; give at least that.', {
        later,
        what,
        earlier,
      }),
    )
}

function checkPractice(profile: CureProfile) {
  const floors = [
    ['handoverMin', leastByPracticeMin],
    ['handoverAdvisedMin', advisedByPracticeMin.from],
  ] as const
  for (const [field, floor] of floors)
    if (profile.sources[field] !== 'data sheet' && profile[field] < floor)
      refuse(
        'below-practice',
        { [field]: profile[field] },
        say(
          '{profile} minutes is less than the {floor} h of common practice; give {floor2} or more, or mark the figure as from the data sheet if the sheet says so.',
          { profile: profile[field], floor: floor / 60, floor2: floor },
        ),
      )
}

function checkConditions({ temperature, humidity, referenceC }: CureProfile, units: UnitSystem) {
  const degrees = (celsius: number) => degreesWords(celsius, units)
  checkNumber(temperature.minC, -20, 60, 'temperature.minC', degrees)
  checkNumber(temperature.maxC, -20, 60, 'temperature.maxC', degrees)
  checkNumber(humidity.minPercent, 0, 100, 'humidity.minPercent', percent)
  checkNumber(humidity.maxPercent, 0, 100, 'humidity.maxPercent', percent)
  checkNumber(referenceC, 0, 60, 'referenceC', degrees)
  if (temperature.maxC <= temperature.minC)
    refuse(
      'range-empty',
      { 'temperature.maxC': temperature.maxC },
      say('{maxC} is not above the least, {minC}; exchange them.', {
        maxC: degrees(temperature.maxC),
        minC: degrees(temperature.minC),
      }),
    )
  if (humidity.maxPercent <= humidity.minPercent)
    refuse(
      'range-empty',
      { 'humidity.maxPercent': humidity.maxPercent },
      say('{maxPercent} % is not above the least, {minPercent} %; exchange them.', {
        maxPercent: humidity.maxPercent,
        minPercent: humidity.minPercent,
      }),
    )
}

function checkRate({ rate, forcedCure, referenceC }: CureProfile, units: UnitSystem) {
  const degrees = (celsius: number) => degreesWords(celsius, units)
  if (rate.rule === 'arrhenius')
    checkNumber(rate.activationOverRK, 1, 50_000, 'rate.activationOverRK', k => `${k} K`)
  if (rate.rule === 'linear') checkNumber(rate.datumC, -40, referenceC - 1, 'rate.datumC', degrees)
  forcedCure.forEach((row, i) => {
    const field = `forcedCure.${i}`
    checkNumber(row.panelC, referenceC, 200, `${field}.panelC`, degrees)
    checkDuration(row.minutes, `${field}.minutes`)
    checkDuration(row.standsForMin, `${field}.standsForMin`)
    if (row.minutes === 0)
      refuse('duration-bad', { [`${field}.minutes`]: 0 }, say('A heated cure takes time; give its minutes.'))
    if (row.standsForMin < row.minutes)
      refuse(
        'order-wrong',
        { [`${field}.standsForMin`]: row.standsForMin },
        say('{standsForMin} minutes is less than the {minutes} the heating takes; heat never slows a cure.', {
          standsForMin: row.standsForMin,
          minutes: row.minutes,
        }),
      )
  })
}

function checkWindows(profile: CureProfile, units: UnitSystem) {
  const { topper, windowRows } = profile
  if (topper && topper.productIds.length === 0)
    refuse(
      'toppers-missing',
      { 'topper.productIds': [] },
      say('Times for a topper are given but not which: choose the toppers the maker allows on this coating.'),
    )
  windowRows.forEach((row, i) => {
    const field = `windowRows.${i}`
    const figures = profile[row.window]
    if (!figures)
      refuse(
        'window-missing',
        { [`${field}.window`]: row.window },
        row.window === 'recoat'
          ? say(
              'A row is given for a recoat window that the profile does not have; give the window itself first.',
            )
          : say(
              'A row is given for a topper window that the profile does not have; give the window itself first.',
            ),
      )
    const degrees = (celsius: number) => degreesWords(celsius, units)
    checkNumber(row.fromC, -20, 60, `${field}.fromC`, degrees)
    checkNumber(row.toC, row.fromC, 60, `${field}.toC`, degrees)
    const times = [row.minMin, ...(row.maxMin === null ? [] : [row.maxMin])]
    times.forEach((minutes, end) => {
      checkDuration(minutes, `${field}.${end === 0 ? 'minMin' : 'maxMin'}`)
    })
    if (row.minMin === 0 || figures.minMin === 0)
      refuse(
        'duration-bad',
        { [`${field}.minMin`]: row.minMin },
        say(
          'A window that opens at once has nothing that temperature could change; give both times more than 0 minutes.',
        ),
      )
    if ((row.maxMin === null) !== (figures.maxMin === null))
      refuse(
        'window-end',
        { [`${field}.maxMin`]: row.maxMin },
        say(
          'The row and the window itself must both close, or neither; give both an end, or leave both empty.',
        ),
      )
    if (row.maxMin !== null) notAfter(row.minMin, row.maxMin, `${field}.maxMin`, say('the window opens'))
  })
  for (const name of windowNames) {
    const rows = windowRows.filter(row => row.window === name).sort((a, b) => a.fromC - b.fromC)
    const met = rows.find((row, i) => i > 0 && row.fromC < rows[i - 1]!.toC)
    if (met)
      refuse(
        'rows-overlap',
        { [`windowRows.${windowRows.indexOf(met)}.fromC`]: met.fromC },
        say('Two rows hold at the same temperature; let one end where the next begins.'),
      )
  }
}

const percent = (value: number) => `${value} %`

function checkNumber(
  value: number,
  least: number,
  most: number,
  field: string,
  words: (value: number) => string,
) {
  if (!(value >= least && value <= most))
    refuse(
      'number-out-of-range',
      { [field]: value },
      say('{value} cannot be right; use {least} to {most}.', {
        value: words(value),
        least: words(least),
        most: words(most),
      }),
    )
}
