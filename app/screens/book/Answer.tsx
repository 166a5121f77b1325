import { Alert, Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { OffersView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import { dateWords, nearWords } from '../../parts/time.ts'
import { Why } from '../../parts/Why.tsx'
import styles from './Book.module.css'
import { type Call, lanesOf, missingOf, type OfferKind, pricingOf } from './call.ts'
import { HeldPlaces } from './HeldPlaces.tsx'
import { Lanes } from './Lanes.tsx'
import { PriceLine } from './PriceLine.tsx'
import { ShelfPart } from './ShelfPart.tsx'
import type { Booking } from './useBooking.ts'
import { WaitingList } from './waiting/WaitingList.tsx'

const dataSheetDecides = say('The times rest on each product’s cure profile; the data sheet decides.')

interface AnswerProps {
  call: Call
  change(part: Partial<Call>): void
  booking: Booking
}

/** When the car may come and go home, what it costs, and the one act that keeps the place. */
export function Answer({ call, change, booking }: AnswerProps) {
  const { wish, wishedOn } = call
  const asking = call.treatmentIds.length > 0 && booking.own === null
  const query = useQuery({
    ...trpc.booking.offers.queryOptions({
      sizeClass: call.sizeClass,
      condition: call.condition,
      finish: call.finish,
      treatmentIds: call.treatmentIds,
      scope: call.scope,
      ...(call.vehicleId && { vehicleId: call.vehicleId }),
      // Offers are laid out anew for whether there is a cover, not for each letter of the name.
      coveredBy: call.coveredBy.trim() === '' ? '' : 'somebody',
      lends: call.lends,
      ...(wishedOn && wish === 'day' && { askedDate: wishedOn }),
      ...(wishedOn && wish === 'notBefore' && { notBefore: wishedOn }),
      ...(wishedOn && wish === 'homeBy' && { homeBy: wishedOn }),
      ...pricingOf(call),
    }),
    enabled: asking,
    placeholderData: before => before,
    staleTime: 0,
  })
  return (
    <div className={styles.answer}>
      <HeldPlaces booking={booking} />
      {booking.fault && (
        <Alert color="red" title={say('Not done')} role="alert">
          {booking.fault.message}
        </Alert>
      )}
      {query.error && asking && (
        <Alert color="red" title={say('No offer')} role="alert">
          {faultOf(query.error).message}
        </Alert>
      )}
      {asking && query.data && (
        <Offered
          call={call}
          change={change}
          offers={query.data}
          settled={!query.isPlaceholderData}
          booking={booking}
        />
      )}
      {call.treatmentIds.length === 0 && !booking.booked && (
        <p className={pieces.empty}>
          {say(
            'Choose what the car is to have: when it may come, when it is home and what it costs stand here, counted with every booked car, the crew’s hours and each coating’s cure.',
          )}
        </p>
      )}
      <WaitingList call={call} />
    </div>
  )
}

interface OfferedProps extends AnswerProps {
  offers: OffersView
  /** These are the offers for what is asked now, not for what was asked before. */
  settled: boolean
}

function Offered({ call, change, offers, settled, booking }: OfferedProps) {
  const [key, setKey] = useState('soonest')
  const lanes = lanesOf(offers, kind => nameOf(kind, call, offers))
  const chosen = lanes.find(lane => lane.key === key) ?? lanes[0]
  const missing = missingOf(call)
  const impossible = offers.soonest.feasible ? [] : offers.soonest.reasons
  const [reason, ...others] = chosen?.offer.reasons ?? impossible
  const dropOff = chosen && nearWords(chosen.offer.dropOffAt, offers.zone, offers.nowAt)
  return (
    <form
      className={styles.offered}
      aria-label={say('Offers')}
      onSubmit={event => {
        event.preventDefault()
        if (chosen && settled && missing === null) booking.hold(chosen.offer)
      }}
    >
      {offers.tooLate && call.wishedOn && (
        <p className={pieces.late} role="status">
          {say('⚑ Cannot be home by {wishedOn}. The places there are:', {
            wishedOn: dateWords(call.wishedOn),
          })}
        </p>
      )}
      {lanes.length > 0 && <Lanes offers={offers} lanes={lanes} chosen={chosen} choose={setKey} />}
      {lanes.length === 0 && <b>{say('Not possible')}</b>}
      <div className={styles.lines}>
        {reason && (
          <Why
            line={chosen ? say('Not sooner: {reason}', { reason: lowered(reason) }) : reason}
            rest={[...others, dataSheetDecides]}
          />
        )}
        {offers.notes.length > 0 && (
          <Why
            line={say('{notes, plural, one {A note on the work} other {{notes} notes on the work}}', {
              notes: offers.notes.length,
            })}
            rest={offers.notes}
          />
        )}
        {chosen && <ShelfPart key={chosen.key} shelf={chosen.offer.shelf} />}
      </div>
      <div className={styles.decide}>
        <PriceLine call={call} change={change} offers={offers} />
        <span className={styles.acts}>
          {missing && <span className={pieces.soft}>{missing}</span>}
          <Button type="submit" disabled={missing !== null || !chosen || !settled} loading={booking.busy}>
            {dropOff ? say('Hold {dropOff} for 30 min', { dropOff }) : say('Hold')}
          </Button>
          <Button
            variant="default"
            disabled={missing !== null || !chosen || !settled || booking.busy}
            onClick={() => chosen && booking.book(chosen.offer)}
          >
            {say('Book at once')}
          </Button>
          <Link to="/">{say('See the board')}</Link>
        </span>
      </div>
    </form>
  )
}

function nameOf(kind: OfferKind, call: Call, offers: OffersView): string {
  if (kind === 'soonest') return say('Soonest home')
  if (kind === 'leastBlocked') return say('Fewest blocked hours')
  return call.wish === 'day' && call.wishedOn
    ? say('Brought {askedDate} or after', { askedDate: dateWords(offers.askedDate) })
    : say('Earliest drop-off')
}

/** A sentence after other words; what begins with a capital by itself, a name or a number, is left. */
function lowered(words: string): string {
  return /^(Bay|The|Nobody|No|It|Its) /.test(words) ? words[0]!.toLowerCase() + words.slice(1) : words
}
