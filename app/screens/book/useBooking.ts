import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { PlaceView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { client, faultOf, trpc } from '../../data/trpc.ts'
import { type Call, pricingOf } from './call.ts'

interface Booked {
  jobId: string
  jobNumber: number
  words: string
}

/** From offer to booking. Customer, car and place are written down in one act, or nothing is. */
export function useBooking(call: Call, change: (part: Partial<Call>) => void, over: () => void) {
  const [booked, setBooked] = useState<Booked | null>(null)
  const held = useQuery(trpc.booking.held.queryOptions())
  const own = held.data?.places.find(place => place.jobId === call.heldJobId) ?? null
  const hold = useSaving(trpc.booking.hold.mutationOptions(), {
    onSaved: ({ jobId, customerId, vehicleId }) => {
      setBooked(null)
      change({ heldJobId: jobId, customerId, vehicleId, isNew: false })
    },
  })
  const done = (jobId: string, jobNumber: number, words: string) => {
    setBooked({ jobId, jobNumber, words })
    if (call.heldJobId === null || call.heldJobId === jobId) over()
  }
  const book = useSaving(trpc.booking.book.mutationOptions(), {
    onSaved: ({ jobId, jobNumber }) => done(jobId, jobNumber, callWords(call)),
  })
  const confirm = useSaving({
    mutationFn: ({ jobId, version }: Parameters<typeof client.booking.confirm.mutate>[0]) =>
      client.booking.confirm.mutate({ jobId, version }),
  })
  const release = useSaving(trpc.booking.release.mutationOptions(), {
    onSaved: () => change({ heldJobId: null }),
  })
  const failure = hold.error ?? book.error ?? confirm.error ?? release.error
  const input = ({ plan }: PlaceView) => ({ ...wishOf(call), ...callerOf(call), ...pricingOf(call), plan })
  return {
    /** The places held, this call's own among them. */
    places: held.data,
    own,
    booked,
    nextCall: () => setBooked(null),
    busy: hold.busy || book.busy || confirm.busy || release.busy,
    hold: (offer: PlaceView) => hold.save(input(offer)),
    book: (offer: PlaceView) => book.save(input(offer)),
    confirm: (place: NonNullable<typeof own>) =>
      confirm.save({ jobId: place.jobId, version: place.version }, () =>
        done(place.jobId, place.jobNumber, `${place.carName}, ${place.customerName}`),
      ),
    release: ({ jobId, version }: NonNullable<typeof own>) => release.save({ jobId, version }),
    fault: failure ? faultOf(failure) : null,
  }
}

export type Booking = ReturnType<typeof useBooking>

/** "WRC 204, Wren Calloway"; without a plate the car by its colour and make. */
export function callWords({ plate, colour, make, customerName }: Call): string {
  return `${plate || [colour, make].filter(Boolean).join(' ')}, ${customerName}`
}

function wishOf({ condition, treatmentIds, scope, wish, wishedOn, coveredBy, lends }: Call) {
  return {
    condition,
    treatmentIds,
    scope,
    coveredBy,
    lends,
    ...(wish === 'day' && wishedOn && { askedDate: wishedOn }),
  }
}

/** Whose car it is: one on file, a new one of somebody on file, or a new customer's. */
function callerOf(call: Call) {
  if (call.vehicleId !== null) return { vehicleId: call.vehicleId }
  const { plate, make, model, colour, sizeClass, finish } = call
  const vehicle = { plate, make, model, colour, sizeClass, finish }
  if (call.customerId !== null) return { customerId: call.customerId, vehicle }
  const customer = { name: call.customerName, phone: call.phone, email: call.email }
  return { customer, vehicle }
}
