/** What a shop, its bays and its crew may not say. */

import { checkWeekly, checkZone, type OpeningHours } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { minorUnitsOf } from '../money/index.ts'
import { refuse } from '../refusal.ts'
import { checkCountry } from '../vehicle/index.ts'
import { checkText } from './text.ts'
import type { Capability, Condition, Skill } from './words.ts'

/** The steps of a booking grid that divide an hour, in minutes. */
export const gridChoices = [5, 10, 15, 20, 30, 60] as const

export type ConditionFactors = Readonly<Record<Condition, number>>

/** How much longer hands-on work takes on worn and heavily marred paint. Rule of thumb, no source. */
export const usualConditionFactors: ConditionFactors = { good: 1, worn: 1.25, heavy: 1.5 }

/** Refuses a shop that nothing could be promised for: no name, an unknown zone or currency, hours nobody can keep. */
export function checkShop(shop: {
  readonly name: string
  readonly zone: string
  readonly currency: string
  readonly country: string
  readonly weekly: readonly OpeningHours[]
}): void {
  checkText(shop.name, 'name', say("The shop's name"))
  checkZone(shop.zone)
  minorUnitsOf(shop.currency)
  checkCountry(shop.country, 'country')
  checkWeekly(shop.weekly)
  if (shop.weekly.length === 0)
    refuse(
      'never-open',
      { weekly: shop.weekly },
      say('The shop is closed on all seven days; give at least one day its hours.'),
    )
}

/** Refuses a grid that does not divide the hour. */
export function checkGrid(gridMin: number, field = 'gridMin'): void {
  if (!gridChoices.some(choice => choice === gridMin))
    refuse(
      'grid-bad',
      { [field]: gridMin },
      say('A grid of {gridMin} minutes is not one the board has; use {gridChoices}.', {
        gridMin,
        gridChoices: gridChoices.join(', '),
      }),
    )
}

/** Refuses factors outside 0.5 to 5, and paint in worse condition that would take less time. */
export function checkConditionFactors(factors: ConditionFactors, field = 'conditionFactors'): void {
  let before = 0.5
  for (const condition of ['good', 'worn', 'heavy'] as const) {
    const factor = factors[condition]
    if (!(factor >= before && factor <= 5))
      refuse(
        'factor-bad',
        { [`${field}.${condition}`]: factor },
        say('{factor} times the usual minutes cannot be right for {condition} paint; use {before} to 5.', {
          factor,
          condition: say(condition),
          before,
        }),
      )
    before = factor
  }
}

/** Refuses a bay without a name or that nothing can be done in. Returns its name as kept. */
export function checkBay(
  bay: { readonly name: string; readonly capabilities: readonly Capability[] },
  field = '',
): string {
  const name = checkText(bay.name, `${field}name`, say("The bay's name"), 40)
  if (bay.capabilities.length === 0)
    refuse(
      'bay-useless',
      { [`${field}capabilities`]: bay.capabilities },
      say('{name} has no use yet; say what it is good for: wet, polish, clean or cure.', { name }),
    )
  return name
}

/** Refuses a crew member without a name or skill, or with hours nobody can keep. Returns the name as kept. */
export function checkCrewMember(
  member: {
    readonly name: string
    readonly skills: readonly Skill[]
    readonly weekly: readonly OpeningHours[] | null
  },
  field = '',
): string {
  const name = checkText(member.name, `${field}name`, say("The crew member's name"), 60)
  if (member.skills.length === 0)
    refuse(
      'skill-missing',
      { [`${field}skills`]: member.skills },
      say('{name} cannot be given any step; say what they do: wash, polish or coat.', { name }),
    )
  if (member.weekly) {
    checkWeekly(member.weekly, `${field}weekly`)
    if (member.weekly.length === 0)
      refuse(
        'never-there',
        { [`${field}weekly`]: member.weekly },
        say('{name} has no hours of their own; give some, or let them work whenever the shop is open.', {
          name,
        }),
      )
  }
  return name
}
