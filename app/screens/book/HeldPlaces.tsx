import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { clockWords, nearWords } from '../../parts/time.ts'
import styles from './Book.module.css'
import type { Booking } from './useBooking.ts'

/** What is held for callers: confirmed as they say yes, found again when they ring back. */
export function HeldPlaces({ booking }: { booking: Booking }) {
  const { places: view, own, booked } = booking
  return (
    <>
      {booked && (
        <div className={styles.held} role="status">
          <span>
            <b className={pieces.kept}>✓ Booked: {booked.words}</b>{' '}
            <span className={pieces.soft}>Job {booked.jobNumber} is on the board.</span>
          </span>
          <span className={styles.acts}>
            <Button component={Link} to="/" size="compact-md" autoFocus>
              See the board
            </Button>
            <Button component={Link} to={`/jobs/${booked.jobId}`} size="compact-md" variant="default">
              Open the job
            </Button>
          </span>
        </div>
      )}
      {view?.places.map(place => {
        const car = `${place.carName}, ${place.customerName}`
        const when = (at: number) => nearWords(at, view.zone, view.nowAt)
        return (
          <div key={place.jobId} className={styles.held} role={place === own ? 'status' : undefined}>
            <span>
              <b>Held for {car}</b>{' '}
              <span className={place.over ? pieces.late : pieces.soft}>
                {place.over ? '⚑ ran out' : 'until'} {clockWords(place.heldUntilAt, view.zone)}
              </span>
              <br />
              <small className={pieces.soft}>
                Drop off by {when(place.dropOffAt)}, home {when(place.promisedAt)}
              </small>
            </span>
            <span className={styles.acts}>
              <Button
                size="compact-md"
                variant={place === own ? 'filled' : 'default'}
                autoFocus={place === own}
                disabled={booking.busy}
                aria-label={place === own ? 'Confirm the booking' : `Confirm the booking of ${car}`}
                onClick={() => booking.confirm(place)}
              >
                Confirm the booking
              </Button>
              <RowButton
                does="Let it go"
                size="compact-md"
                {...(place !== own && { of: car })}
                onClick={() => booking.release(place)}
              />
              <Button
                component={Link}
                to={`/jobs/${place.jobId}`}
                size="compact-md"
                variant="default"
                aria-label={`Open the job of ${car}`}
              >
                Open
              </Button>
            </span>
          </div>
        )
      })}
    </>
  )
}
