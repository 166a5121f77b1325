import { Button } from '@mantine/core'
import type { QuoteView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { Facts } from '../../../parts/Facts.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { nearWords } from '../../../parts/time.ts'
import styles from './Quotes.module.css'

interface Props {
  quote: QuoteView
  variant: QuoteView['variants'][number]
  chosen: boolean
  onChoose: (() => void) | null
}

/** 182 days are "6 months", 730 are "2 years". */
function lifeWords(days: number): string {
  const months = Math.max(1, Math.round(days / 30.4))
  if (months < 24) return say('{months, plural, one {1 month} other {{months} months}}', { months })
  return say('{months} years', { months: Math.round(months / 12) })
}

/** One way to treat the car: what it costs, what it gives, what follows. */
export function Variant({ quote, variant, chosen, onChoose }: Props) {
  const show = (minor: number) => money(minor, quote.currency)
  const { treatments, charges, lasts, upkeepVisits, upkeepMinor } = variant
  return (
    <section className={styles.variant} data-chosen={chosen} aria-label={variant.name}>
      <h3>{variant.name}</h3>
      <span>
        <b className={styles.price}>{show(variant.priceMinor)}</b>{' '}
        <span className={pieces.soft}>{quote.taxInPrices ? say('with tax') : say('before tax')}</span>
      </span>
      <ul className={pieces.plain}>
        {treatments.map(each => (
          <li key={each.id}>
            {each.name}, {show(each.priceMinor)}
          </li>
        ))}
        {charges.map((each, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a charge has no other name than its place
          <li key={i} className={each.kind === 'extra' ? undefined : pieces.soft}>
            {each.kind === 'extra'
              ? `${each.words}, ${show(Math.round(each.amountMinor * Number(each.quantity)))}`
              : `${each.words}: ${show(-each.amountMinor)}`}
          </li>
        ))}
      </ul>
      <Facts
        of={{
          [say('Lasts||a coating')]:
            lasts.length > 0 && lasts.map(each => `${each.name} ${lifeWords(each.days)}`).join(', '),
          [say('Away||the car')]: say('{daysAway, plural, one {1 day} other {{daysAway} days}}', {
            daysAway: variant.daysAway,
          }),
          [say('Upkeep, 3 years')]:
            upkeepVisits > 0 &&
            say('{upkeepVisits} visits{upkeepMinor}', {
              upkeepVisits,
              upkeepMinor: upkeepMinor === null ? say(', not all priced') : `, ${show(upkeepMinor)}`,
            }),
          [say('When quoted')]: say('{dropOffAt}, home {handoverAt}', {
            dropOffAt: nearWords(variant.dropOffAt, quote.zone, quote.nowAt),
            handoverAt: nearWords(variant.handoverAt, quote.zone, quote.nowAt),
          }),
        }}
      />
      {onChoose && (
        <Button variant={chosen ? 'filled' : 'default'} onClick={onChoose} aria-pressed={chosen}>
          {chosen ? say('✓ Chosen') : say('Choose {name}', { name: variant.name })}
        </Button>
      )}
    </section>
  )
}
