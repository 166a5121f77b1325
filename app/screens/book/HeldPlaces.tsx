import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { nearWords, todayWords } from '../../parts/time.ts'
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
            <b className={pieces.kept}>{say('✓ Booked: {words}', { words: booked.words })}</b>{' '}
            <span className={pieces.soft}>
              {say('Job {jobNumber} is on the board.', { jobNumber: booked.jobNumber })}
            </span>
          </span>
          <span className={styles.acts}>
            <Button component={Link} to="/" size="compact-md" autoFocus>
              {say('See the board')}
            </Button>
            <Button component={Link} to={`/jobs/${booked.jobId}`} size="compact-md" variant="default">
              {say('Open the job')}
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
              <Say text="<b>Held for {car}</b>" values={{ car }} />{' '}
              <span className={place.over ? pieces.late : pieces.soft}>
                {place.over
                  ? say('⚑ ran out {at}', { at: todayWords(place.heldUntilAt, view.zone, view.nowAt) })
                  : say('until {at}', { at: todayWords(place.heldUntilAt, view.zone, view.nowAt) })}
              </span>
              <br />
              <small className={pieces.soft}>
                {say('Drop off by {dropOffAt}, home {promisedAt}', {
                  dropOffAt: when(place.dropOffAt),
                  promisedAt: when(place.promisedAt),
                })}
              </small>
            </span>
            <span className={styles.acts}>
              <Button
                size="compact-md"
                variant={place === own ? 'filled' : 'default'}
                autoFocus={place === own}
                disabled={booking.busy}
                aria-label={
                  place === own ? say('Confirm the booking') : say('Confirm the booking of {car}', { car })
                }
                onClick={() => booking.confirm(place)}
              >
                {say('Confirm the booking')}
              </Button>
              <RowButton
                does={say('Release it')}
                size="compact-md"
                {...(place !== own && { of: car })}
                onClick={() => booking.release(place)}
              />
              <Button
                component={Link}
                to={`/jobs/${place.jobId}`}
                size="compact-md"
                variant="default"
                aria-label={say('Open the job of {car}', { car })}
              >
                {say('Open||the button')}
              </Button>
            </span>
          </div>
        )
      })}
    </>
  )
}
