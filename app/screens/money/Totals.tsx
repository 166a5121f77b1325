import { decimalNow, say } from '../../../main/domain/language/index.ts'
import type { RateTotal } from '../../../main/domain/money/index.ts'
import { money } from '../../parts/money.ts'
import styles from './Money.module.css'

interface Props {
  of: {
    currency: string
    taxPerRate: readonly (RateTotal & { name: string })[]
    allowanceReason?: string
    allowanceMinor: number
    withoutTaxMinor: number
    withTaxMinor: number
    depositMinor?: number
    carriedMinor?: number
  }
}

/** What lines come to: what is taken off the whole, the tax of each rate, and the sum. */
export function Totals({ of }: Props) {
  const show = (minor: number) => money(minor, of.currency)
  const rows = [
    ...(of.allowanceMinor > 0
      ? [
          [
            say('Off: {allowanceReason}', { allowanceReason: of.allowanceReason ?? '' }),
            show(-of.allowanceMinor),
          ],
        ]
      : []),
    ...(of.taxPerRate.some(rate => rate.taxMinor > 0)
      ? [[say('Without tax'), show(of.withoutTaxMinor)]]
      : []),
    ...of.taxPerRate.map(({ name, ratePercent, category, baseMinor, taxMinor }) => [
      category === 'S'
        ? say('{name} {ratePercent} % on {baseMinor}', {
            name,
            ratePercent: decimalNow(ratePercent),
            baseMinor: show(baseMinor),
          })
        : `${name}, ${show(baseMinor)}`,
      show(taxMinor),
    ]),
  ]
  return (
    <dl className={styles.totals}>
      {rows.map(([name, amount]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{amount}</dd>
        </div>
      ))}
      <div className={styles.sum}>
        <dt>{say('Together')}</dt>
        <dd>{show(of.withTaxMinor)}</dd>
      </div>
      {[
        [say('Deposit paid'), of.depositMinor ?? 0] as const,
        [say('Paid already'), of.carriedMinor ?? 0] as const,
      ].map(
        ([name, minor]) =>
          minor > 0 && (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{show(-minor)}</dd>
            </div>
          ),
      )}
    </dl>
  )
}
