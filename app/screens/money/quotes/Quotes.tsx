import { useQuery } from '@tanstack/react-query'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowLinks } from '../../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { dateWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import styles from '../Money.module.css'
import { QuoteSheet } from './QuoteSheet.tsx'
import { quoteWords } from './quoteWords.ts'

/** The quotes, the newest first, and the one that is chosen. */
export function Quotes({ id }: SectionProps) {
  const { data: quotes, error } = useQuery(trpc.money.quotes.queryOptions())
  if (!quotes) return <Waiting error={error} words={say('Looking them up')} />
  return (
    <>
      <ScreenTitle title={say('Quotes')} />
      <div className={id ? `${pieces.side} ${styles.chosen}` : pieces.side}>
        <div className={pieces.column}>
          <RowLinks
            label={say('Every quote')}
            to="/money/$section/$id"
            section="quotes"
            rows={quotes.map(each => ({
              id: each.id,
              title: `${each.number} · ${each.customerName}`,
              about: say('{carName} · {each}, good until {validUntil} · from {fromMinor}', {
                carName: each.carName,
                each: quoteWords(each),
                validUntil: dateWords(each.validUntil),
                fromMinor: money(each.fromMinor, each.currency),
              }),
              archived: each.status === 'declined',
            }))}
          />
          {quotes.length === 0 && (
            <p className={pieces.empty}>
              {say('No quote yet: one is begun on its customer’s page, beside the car.')}
            </p>
          )}
        </div>
        <div className={pieces.column}>
          {id ? (
            <QuoteSheet key={id} id={id} />
          ) : (
            <p className={pieces.empty}>{say('Choose a quote to see it.')}</p>
          )}
        </div>
      </div>
    </>
  )
}
