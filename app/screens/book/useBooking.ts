import { useState } from 'react'
import type { HoldView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { client, faultOf } from '../../data/trpc.ts'
import type { Chosen, Draft } from './booking.ts'

export interface Held extends HoldView {
  plate: string
  customerName: string
}

/**
 * From offer to booking. Holding saves the new customer and car first; what was saved stays known to the draft, so
 * that a refusal further on loses nothing and repeats nothing.
 */
export function useBooking(draft: Draft, change: (part: Partial<Draft>) => void) {
  const [held, setHeld] = useState<Held | null>(null)
  const [booked, setBooked] = useState(false)
  const hold = useSaving(
    {
      mutationFn: async (chosen: NonNullable<Chosen>): Promise<Held> => {
        const customerId = draft.customerId ?? (await saveCustomer(draft)).id
        if (customerId !== draft.customerId) change({ customerId })
        const vehicleId = draft.vehicleId ?? (await saveVehicle(draft, customerId)).id
        if (vehicleId !== draft.vehicleId) change({ vehicleId })
        const place = await client.booking.hold.mutate({
          vehicleId,
          condition: draft.condition,
          treatmentIds: draft.treatmentIds,
          ...(draft.askedDate ? { askedDate: draft.askedDate } : {}),
          plan: chosen.offer.plan,
        })
        return { ...place, plate: draft.plate, customerName: draft.customerName }
      },
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
    hold,
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

const orNone = (text: string) => (text.trim() ? text.trim() : undefined)

function saveCustomer(draft: Draft) {
  const phone = orNone(draft.phone)
  const email = orNone(draft.email)
  return client.customers.save.mutate({
    name: draft.customerName.trim(),
    ...(phone ? { phone } : {}),
    ...(email ? { email } : {}),
  })
}

function saveVehicle(draft: Draft, customerId: string) {
  const { plate, make, model, colour, sizeClass, finish } = draft
  return client.vehicles.save.mutate({ customerId, plate, make, model, colour, sizeClass, finish, note: '' })
}
