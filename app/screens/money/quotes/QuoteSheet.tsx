import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { QuoteView } from '../../../../main/api/views.ts'
import { typedSignature } from '../../../../main/domain/intake/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { Lookup } from '../../../parts/Lookup.tsx'
import pieces from '../../../parts/pieces.module.css'
import { fullDateWords, fullWords } from '../../../parts/time.ts'
import { BookIt } from './BookIt.tsx'
import styles from './Quotes.module.css'
import { quoteWords } from './quoteWords.ts'
import { SignForm } from './SignForm.tsx'
import { Variant } from './Variant.tsx'

/** One quote: its ways side by side, then the signature, then the booking. */
export function QuoteSheet({ id }: { id: string }) {
  const { data: quote, error } = useQuery(trpc.money.quote.queryOptions({ id }))
  const decline = useSaving(trpc.money.declineQuote.mutationOptions())
  const [chosen, setChosen] = useState<number | null>(null)
  if (!quote)
    return <Lookup error={error} what={say('the quote')} to="/money" label={say('To what is owed')} />
  const open = quote.status === 'open' && !quote.over
  const position = quote.accepted ?? chosen
  return (
    <>
      <Card
        title={say('Quote {number} for {name}', { number: quote.number, name: quote.customer.name })}
        about={`${quote.carName}, ${quoteWords(quote)}`}
      >
        <div className={styles.variants}>
          {quote.variants.map(variant => (
            <Variant
              key={variant.id}
              quote={quote}
              variant={variant}
              chosen={position === variant.position}
              onChoose={open ? () => setChosen(variant.position) : null}
            />
          ))}
        </div>
        <p className={quote.over ? pieces.late : pieces.soft}>
          {quote.over && '⚑ '}
          {say('Good until {validUntil}. {note}', {
            validUntil: fullDateWords(quote.validUntil),
            note: quote.note,
          })}
        </p>
        <Refused of={decline.error} />
        <Group>
          <DocumentButton
            path={`/documents/quote/${id}.pdf`}
            aria-label={say('Quote {number} as PDF', { number: quote.number })}
          >
            {say('PDF')}
          </DocumentButton>
          {(quote.status === 'open' || quote.status === 'accepted') && (
            <Button variant="default" onClick={() => decline.save({ id, version: quote.version })}>
              {say('Declined')}
            </Button>
          )}
        </Group>
      </Card>
      {open && chosen !== null && <SignForm key={chosen} quote={quote} position={chosen} />}
      {quote.signedAt !== null && <Signed quote={quote} />}
      {quote.status === 'accepted' && <BookIt quote={quote} />}
    </>
  )
}

function Signed({ quote }: { quote: QuoteView }) {
  return (
    <Card title={say('Signed')} about={`${quote.signedName}, ${fullWords(quote.signedAt ?? 0, quote.zone)}`}>
      {quote.signature === typedSignature ? (
        <p>{say('Confirmed with the typed name: {name}', { name: quote.signedName })}</p>
      ) : (
        <img
          src={quote.signature}
          alt={say('Signature of {signedName}', { signedName: quote.signedName })}
          className={styles.signature}
        />
      )}
      {quote.jobId && (
        <Link to="/jobs/$id" params={{ id: quote.jobId }}>
          {say('To its booking')}
        </Link>
      )}
    </Card>
  )
}
