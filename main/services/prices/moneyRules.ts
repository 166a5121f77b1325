/** How the shop prices, taxes and bills. */
import { say, word } from '../../domain/language/index.ts'
import { checkRates, splitDeposit, type TaxRate } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote, checkText, checkUnique } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import type { MoneyRules } from './inputs.ts'

/** What a shop begins with: no tax, because only the shop knows its own; days are common practice, no source. */
const startingRules: MoneyRules = {
  taxInPrices: false,
  taxes: [{ key: 'usual', name: word('No tax'), percent: '0', category: 'O' }],
  extras: [],
  packages: [],
  sharedOnce: true,
  wornPercent: '0',
  heavyPercent: '0',
  depositPercent: '0',
  cashStepMinor: 1,
  invoiceSeries: 'INV',
  creditSeries: 'CN',
  payWithinDays: 14,
  quoteDays: 30,
  labourMinor: 0,
  taxNumber: '',
  payTo: '',
  noShowMinor: 0,
  keptDayMinor: 0,
  version: 0,
}

/** The rules as the shop has set them, or as it begins with. */
export async function moneyRules(tx: Tx): Promise<MoneyRules> {
  const row = await tx.moneyRules.findFirst()
  if (!row)
    return {
      ...startingRules,
      taxes: startingRules.taxes.map(tax => ({ ...tax, name: say(tax.name) })),
    }
  const { id: _, taxes, extras, packages, ...rest } = row
  return {
    ...rest,
    taxes: fromJson<MoneyRules['taxes']>(taxes),
    extras: fromJson<MoneyRules['extras']>(extras),
    packages: fromJson<MoneyRules['packages']>(packages),
  }
}

/** The rules for the screens. */
export function getMoneyRules(desk: Desk): Promise<MoneyRules> {
  return moneyRules(desk.store.read)
}

/** The rate of this key; the usual one where the key is empty or gone. */
export function rateOf({ taxes }: Pick<MoneyRules, 'taxes'>, key: string): TaxRate {
  return taxes.find(each => each.key === key) ?? taxes[0]!
}

/** Saves the rules; version 0 where none were saved yet. What was sold and issued before stays as it was. */
export async function saveMoneyRules(desk: Desk, input: MoneyRules): Promise<MoneyRules> {
  const { version, ...given } = input
  const data = checked(given)
  return act(desk, async (tx, audit) => {
    const kept = { table: tx.moneyRules, entity: 'money rules' }
    await saveSingle(audit, kept, { key: { id: 1 }, version }, data)
    return moneyRules(tx)
  })
}

function checked(given: Omit<MoneyRules, 'version'>): Omit<MoneyRules, 'version'> {
  const { taxes, extras, packages } = given
  checkRates(taxes, 'taxes')
  checkUnique(
    extras.map(each => each.name),
    i => `extras.${i}.name`,
    say('an extra'),
  )
  for (const [i, { priceMinor }] of extras.entries())
    if (priceMinor <= 0)
      refuse('price-missing', { [`extras.${i}.priceMinor`]: priceMinor }, say('Give its price, above 0.'))
  for (const [i, { treatmentIds, percent }] of packages.entries()) {
    if (new Set(treatmentIds).size < 2)
      refuse(
        'package-small',
        { [`packages.${i}.treatmentIds`]: treatmentIds },
        say('A package has two treatments or more.'),
      )
    checkPercent(percent, `packages.${i}.percent`)
  }
  for (const field of ['depositPercent', 'wornPercent', 'heavyPercent'] as const)
    checkPercent(given[field], field)
  for (const field of ['payWithinDays', 'quoteDays'] as const)
    if (given[field] < 0) refuse('days-bad', { [field]: given[field] }, say('Give 0 days or more.'))
  if (given.cashStepMinor < 1)
    refuse('coin-bad', { cashStepMinor: given.cashStepMinor }, say('The smallest coin is above 0.'))
  for (const field of ['noShowMinor', 'keptDayMinor'] as const)
    if (given[field] < 0) refuse('fee-bad', { [field]: given[field] }, say('A fee is 0 or more.'))
  if (given.labourMinor < 0)
    refuse('cost-bad', { labourMinor: given.labourMinor }, say('An hour costs 0 or more.'))
  const invoiceSeries = checkText(
    given.invoiceSeries,
    'invoiceSeries',
    say('The letters before the number'),
    12,
  )
  const creditSeries = checkText(given.creditSeries, 'creditSeries', say('The letters before the number'), 12)
  if (invoiceSeries === creditSeries)
    refuse(
      'series-same',
      { creditSeries },
      say('Invoices and credit notes are numbered apart: give other letters.'),
    )
  return {
    ...given,
    taxes: taxes.map(each => ({ ...each, name: checkText(each.name, 'taxes', say('The rate'), 40) })),
    extras: extras.map((each, i) => ({
      ...each,
      name: checkText(each.name, `extras.${i}.name`, say('The extra'), 80),
    })),
    packages: packages.map((each, i) => ({
      ...each,
      name: checkText(each.name, `packages.${i}.name`, say('The package'), 80),
      treatmentIds: [...new Set(each.treatmentIds)],
    })),
    invoiceSeries,
    creditSeries,
    taxNumber: checkNote(given.taxNumber, 'taxNumber', 40),
    payTo: checkNote(given.payTo, 'payTo', 400),
  }
}

/** Refuses what is no percentage from 0 to 100. */
function checkPercent(percent: string, field: string): void {
  try {
    splitDeposit(0, percent)
  } catch {
    refuse(
      'percent-bad',
      { [field]: percent },
      say('"{percent}" is no percentage; give 0 to 100.', { percent }),
    )
  }
}
