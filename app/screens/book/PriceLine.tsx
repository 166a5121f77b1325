import type { OffersView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { MoneyInput } from '../../parts/inputs.tsx'
import { money } from '../../parts/money.ts'
import { OnTop } from '../../parts/OnTop.tsx'
import pieces from '../../parts/pieces.module.css'
import { durationWords } from '../../parts/time.ts'
import styles from './Book.module.css'
import type { Call } from './call.ts'

interface Props {
  call: Call
  offers: OffersView
  change(part: Partial<Call>): void
}

/** What it costs, what is in that, and what is asked for now. */
export function PriceLine({ call, offers, change }: Props) {
  const { charges, priceMinor, depositMinor, unpriced, currency } = offers
  const show = (minor: number) => money(minor, currency)
  const off = Map.groupBy(
    charges.filter(each => each.kind !== 'extra'),
    each => each.words,
  )
  const open = offers.treatments.filter(each => unpriced.includes(each.name))
  return (
    <div className={styles.cost}>
      <span>
        {priceMinor > 0 && <b className={styles.price}>{show(priceMinor)}</b>}{' '}
        <span className={pieces.soft}>
          {priceMinor > 0 && (offers.taxInPrices ? `${say('with tax ·')} ` : `${say('before tax ·')} `)}
          {say('{handsOnMin} hands-on', { handsOnMin: durationWords(offers.handsOnMin) })}
          {depositMinor > 0 && ` ${say('· deposit {depositMinor}', { depositMinor: show(depositMinor) })}`}
        </span>
      </span>
      {[...off].map(([words, same]) => (
        <small key={words} className={pieces.soft}>
          {words}: {show(-same.reduce((sum, each) => sum + each.amountMinor, 0))}
        </small>
      ))}
      {open.map(treatment => (
        <span key={treatment.id} className={styles.agreed}>
          <span className={pieces.late}>{say('⚑ No price for {name}', { name: treatment.name })}</span>
          <MoneyInput
            aria-label={say('Price agreed for {name}', { name: treatment.name })}
            size="xs"
            value={0}
            onChange={priceMinor =>
              change({
                agreed: [
                  ...call.agreed.filter(each => each.treatmentId !== treatment.id),
                  { treatmentId: treatment.id, priceMinor },
                ],
              })
            }
          />
        </span>
      ))}
      <OnTop
        value={call}
        change={change}
        currency={currency}
        position="top-start"
        about={say('A discount needs a reason')}
      />
    </div>
  )
}
