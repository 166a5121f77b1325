import { Alert, Button, Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { clockWords } from '../../parts/time.ts'
import type { Held, useBooking } from './useBooking.ts'

interface Props {
  held: Held
  zone: string
  booking: ReturnType<typeof useBooking>
  startOver(): void
}

/** The place is held: confirm it while the caller says yes, or let it go. */
export function HeldPlace({ held, zone, booking, startOver }: Props) {
  if (booking.booked)
    return (
      <Alert color="green" title={`Booked: ${held.plate}, ${held.customerName}`} role="status">
        <Group>
          <span>Job {held.jobNumber} is on the board.</span>
          <Button component={Link} to="/" autoFocus>
            See the board
          </Button>
          <Button component={Link} to={`/jobs/${held.jobId}`} variant="default">
            Open the job
          </Button>
          <Button variant="default" onClick={startOver}>
            Next caller
          </Button>
        </Group>
      </Alert>
    )
  return (
    <Alert title={`Held for ${held.plate}, ${held.customerName}`} role="status">
      <Group>
        <span>Nobody else can take this place until {clockWords(held.heldUntilAt, zone)}.</span>
        <Button autoFocus onClick={() => booking.confirm.save(held)} loading={booking.confirm.busy}>
          Confirm the booking
        </Button>
        <Button variant="default" onClick={() => booking.release.save(held)} loading={booking.release.busy}>
          Let it go
        </Button>
        {booking.fault && (
          <Button component={Link} to={`/jobs/${held.jobId}`} variant="default">
            Open the job
          </Button>
        )}
      </Group>
    </Alert>
  )
}
