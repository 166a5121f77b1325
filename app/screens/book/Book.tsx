import { Alert, Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { useNowAt } from '../../data/now.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { durationWords } from '../../parts/time.ts'
import styles from './Book.module.css'
import { type Chosen, type Draft, emptyDraft } from './booking.ts'
import { HeldPlace } from './HeldPlace.tsx'
import { OfferCards, OfferFacts } from './OfferCards.tsx'
import { useBooking } from './useBooking.ts'
import { WhatPicker } from './WhatPicker.tsx'
import { WhoPicker } from './WhoPicker.tsx'

/** The front desk with a caller on the phone: who, what, when, and an honest promise. */
export function Book() {
  const [draft, setDraft] = useState<Draft>(emptyDraft)
  const [chosen, setChosen] = useState<Chosen>(null)
  const nowAt = useNowAt()
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const change = (part: Partial<Draft>) => {
    setDraft(current => ({ ...current, ...part }))
    if (
      'treatmentIds' in part ||
      'coveredBy' in part ||
      'sizeClass' in part ||
      'condition' in part ||
      'askedDate' in part
    )
      setChosen(null)
  }
  // Offers are laid out anew for whether there is a cover, not for each letter of the name.
  const coveredBy = draft.coveredBy.trim() === '' ? '' : 'somebody'
  const booking = useBooking(draft)
  const asking = draft.treatmentIds.length > 0 && !booking.held
  const query = useQuery({
    ...trpc.booking.offers.queryOptions({
      sizeClass: draft.sizeClass,
      condition: draft.condition,
      finish: draft.finish,
      treatmentIds: draft.treatmentIds,
      coveredBy,
      ...(draft.askedDate ? { askedDate: draft.askedDate } : {}),
    }),
    enabled: asking,
    placeholderData: before => before,
    staleTime: 0,
  })
  const startOver = () => {
    booking.reset()
    setChosen(null)
    setDraft(emptyDraft)
  }
  if (!shop || nowAt === null) return null
  const offers = draft.treatmentIds.length > 0 ? query.data : undefined
  const missing = missingOf(draft, chosen)
  return (
    <div className={pieces.column}>
      <div className={pieces.heading}>
        <h1>Book a car</h1>
      </div>
      <div className={styles.columns}>
        <fieldset className={pieces.column} disabled={booking.held !== null} aria-label="Who and what">
          <Card title="Who">
            <WhoPicker draft={draft} change={change} fault={booking.fault} />
          </Card>
          <Card title="What">
            <WhatPicker
              draft={draft}
              currency={shop.currency}
              today={dateOf(nowAt, shop.zone)}
              change={change}
            />
          </Card>
        </fieldset>
        <div className={pieces.column} aria-live="polite">
          {booking.held ? (
            <HeldPlace held={booking.held} zone={shop.zone} booking={booking} startOver={startOver} />
          ) : (
            offers && (
              <div className={styles.decide}>
                <span>
                  <b>{money(offers.priceMinor, offers.currency)}</b> · {durationWords(offers.handsOnMin)}{' '}
                  hands-on · {offers.steps.filter(step => step.kind === 'work').length} steps
                </span>
                <span className={pieces.soft}>{missing}</span>
                <Button
                  disabled={missing !== null || !chosen}
                  loading={booking.hold.busy}
                  onClick={() => chosen && booking.hold.save(chosen)}
                >
                  Hold this place
                </Button>
              </div>
            )
          )}
          {booking.fault && (
            <Alert color="red" title="Not done" role="alert">
              {booking.fault.message}
            </Alert>
          )}
          {query.error && asking && (
            <Alert color="red" title="No offer" role="alert">
              {faultOf(query.error).message}
            </Alert>
          )}
          {offers?.notes.map(note => (
            <p key={note} className={styles.note}>
              {note}
            </p>
          ))}
          {offers && booking.held && chosen ? (
            <div className={`${styles.offer} ${styles.held}`}>
              <OfferFacts offer={chosen.offer} offers={offers} />
            </div>
          ) : offers ? (
            <OfferCards offers={offers} asked={draft.askedDate !== null} chosen={chosen} choose={setChosen} />
          ) : (
            <p className={pieces.empty}>
              Choose what the car is to have, and three honest offers appear here: soonest home, fewest hours
              a bay stands blocked, and the day asked for. They count every booked car, the crew’s hours and
              what each coating’s cure allows.
            </p>
          )}
          <p className={pieces.soft}>
            The times rest on each product’s cure profile; the data sheet decides.
          </p>
        </div>
      </div>
    </div>
  )
}

/** What is still to be said before a place can be held; null where nothing is. */
function missingOf(draft: Draft, chosen: Chosen): string | null {
  if (!chosen) return 'Choose an offer.'
  if (draft.customerId === null && !draft.customerName.trim()) return 'Whose car is it?'
  if (draft.vehicleId === null && !draft.plate.trim()) return 'Which plate?'
  return null
}
