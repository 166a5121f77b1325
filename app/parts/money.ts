import { localeNow } from '../../main/domain/language/index.ts'
import { formatMoney } from '../../main/domain/money/index.ts'

/** An amount as this desk's language writes it. */
export function money(amountMinor: number, currency: string): string {
  return formatMoney(amountMinor, currency, localeNow())
}
