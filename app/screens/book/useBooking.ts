import { useState } from 'react'
import type { HoldView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { client, faultOf } from '../../data/trpc.ts'
import type { Chosen, Draft } from './booking.ts'

export interface Held extends HoldView {
  plate: string
  customerName: string
}

type Hold = Parameters<typeof client.booking.hold.mutate>[0]

/** From offer to booking. Holding a place writes a new customer and car down in the same act, or nothing at all. */
export function useBooking(draft: Draft) {
  const [held, setHeld] = useState<Held | null>(null)
  const [booked, setBooked] = useState(false)
  const hold = useSaving(
    {
      mutationFn: async (input: Hold): Promise<Held> => ({
        ...(await client.booking.hold.mutate(input)),
        plate: draft.plate,
        customerName: draft.customerName,
      }),
    },
    { onSaved: setHeld },
  )
  const confirm = useSaving(
    { mutationFn: ({ jobId, version }: Held) => client.booking.confirm.mutate({ jobId, version }) },
    { onSaved: () => setBooked(true) },
  )
  const release = useSaving(
    { mutationFn: ({ jobId, version }: Held) => client.booking.release.mutate({ jobId, version }) },
    { onSaved: () => setHeld(null) },
  )
  const failure = hold.error ?? confirm.error ?? release.error
  return {
    held,
    booked,
    hold: {
      busy: hold.busy,
      save: ({ offer }: NonNullable<Chosen>) =>
        hold.save({ ...wishOf(draft), ...callerOf(draft), plan: offer.plan }),
    },
    confirm,
    release,
    fault: failure ? faultOf(failure) : null,
    reset: () => {
      setHeld(null)
      setBooked(false)
      confirm.reset()
    },
  }
}

function wishOf({ condition, treatmentIds, askedDate, coveredBy }: Draft) {
  return { condition, treatmentIds, coveredBy, ...(askedDate ? { askedDate } : {}) }
}

/** Whose car it is: one on file, a new one of somebody on file, or a new customer's. */
function callerOf(draft: Draft) {
  if (draft.vehicleId !== null) return { vehicleId: draft.vehicleId }
  const { plate, make, model, colour, sizeClass, finish } = draft
  const vehicle = { plate, make, model, colour, sizeClass, finish }
  if (draft.customerId !== null) return { customerId: draft.customerId, vehicle }
  const customer = { name: draft.customerName, phone: draft.phone, email: draft.email }
  return { customer, vehicle }
}
