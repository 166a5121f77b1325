import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import {
  CRASH_RISK,
  checkFactors,
  checkSendHours,
  type SendRules,
  STARTING_FACTORS,
} from '../../domain/upkeep/index.ts'
import { readMailAddress } from '../../domain/vehicle/index.ts'
import { toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import { act, type Desk } from '../desk/desk.ts'
import { calendarOf, findShop } from '../desk/shopView.ts'
import type { UpkeepSettings } from './inputs.ts'

export type UpkeepRules = Omit<UpkeepSettings, 'version'>

/** What a shop begins with. All of it is common practice, no source, and the shop's to change. */
const startingRules: Omit<UpkeepRules, 'language'> = {
  level: 0.9,
  fromMin: 9 * 60,
  toMin: 18 * 60,
  closedWeekdays: [7],
  closedDates: [],
  closedWithShop: true,
  dailyLimit: 30,
  maxTries: 3,
  gapDays: 5,
  againDays: 10,
  laterDays: 30,
  leadDays: 21,
  holdDays: 5,
  automatic: false,
  crashRisk: CRASH_RISK,
  stopAddress: '',
  treatments: {},
  roomShare: 0.5,
  checkUpDays: 28,
  factors: STARTING_FACTORS.map(factor => ({ ...factor, choices: [...factor.choices] })),
}

/** The shop's rules for upkeep, as it set them or as it begins with. */
export async function upkeepRules(tx: Tx): Promise<UpkeepSettings> {
  const row = await tx.upkeepSettings.findFirst()
  // Owners are written to in the shop's language until another is set.
  const language = (await findShop(tx))?.language ?? 'en'
  return {
    ...startingRules,
    language,
    ...(row?.rules as Partial<UpkeepRules> | undefined),
    version: row?.version ?? 0,
  }
}

/** The rules for the screens. */
export function getUpkeepSettings(desk: Desk): Promise<UpkeepSettings> {
  return upkeepRules(desk.store.read)
}

/** The rules of politeness as the gate takes them; with the shop's closed dates where the shop wants them too. */
export async function sendRules(tx: Tx, rules: UpkeepRules): Promise<SendRules> {
  const { exceptions } = await calendarOf(tx)
  const closed = rules.closedWithShop
    ? exceptions.filter(each => each.hours.length === 0).map(each => each.date)
    : []
  return {
    hours: {
      fromMin: rules.fromMin,
      toMin: rules.toMin,
      closedWeekdays: rules.closedWeekdays,
      closedDates: [...rules.closedDates, ...closed],
    },
    dailyLimit: rules.dailyLimit,
    maxTries: rules.maxTries,
    gapDays: rules.gapDays,
  }
}

/** Saves the rules. `version` 0 where none were saved yet. */
export async function saveUpkeepSettings(desk: Desk, input: UpkeepSettings): Promise<UpkeepSettings> {
  const { version, ...fields } = input
  const rules: UpkeepRules = {
    ...fields,
    language: checkLanguage(fields.language),
    stopAddress: fields.stopAddress.trim() ? readMailAddress(fields.stopAddress, 'stopAddress') : '',
  }
  checkSendHours(rules)
  checkFactors(rules.factors)
  return act(desk, async (tx, audit) => {
    const before = await upkeepRules(tx)
    const data = { rules: toJson(rules) }
    if (before.version === 0 && version === 0) await tx.upkeepSettings.create({ data })
    else {
      const { count } = await tx.upkeepSettings.updateMany({
        where: { id: 1, version },
        data: { ...data, version: { increment: 1 } },
      })
      assertFresh(count, word('upkeep settings'), '1')
    }
    audit({
      act: 'changed',
      entity: 'upkeep settings',
      entityId: '1',
      detail: changesBetween(before, rules),
    })
    return upkeepRules(tx)
  })
}

/** A language tag as it is kept; refused where it is none. */
export function checkLanguage(language: string, field = 'language'): string {
  const tag = checkText(language, field, say('The language'), 20)
  try {
    const [canonical] = Intl.getCanonicalLocales(tag)
    if (canonical !== undefined) return canonical
  } catch {
    // What Intl does not know is refused below.
  }
  const words = say('"{language}" is no language tag; use one such as en or de-CH.', { language })
  return refuse('language-bad', { [field]: language }, words)
}
