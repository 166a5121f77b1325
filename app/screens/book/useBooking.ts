import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { HoldView } from '../../../main/api/views.ts'
import { client, faultOf } from '../../data/trpc.ts'
import { useOneAtATime } from '../../data/useOneAtATime.ts'
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
  const queries = useQueryClient()
  const [held, setHeld] = useState<Held | null>(null)

  const hold = useOneAtATime(
    useMutation({
      mutationFn: async (chosen: NonNullable<Chosen>) => {
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
      onSuccess: setHeld,
      onSettled: () => queries.invalidateQueries(),
    }),
  )

  const confirm = useOneAtATime(
    useMutation({
      mutationFn: (place: Held) =>
        client.booking.confirm.mutate({ jobId: place.jobId, version: place.version }),
      onSettled: () => queries.invalidateQueries(),
    }),
  )

  const release = useOneAtATime(
    useMutation({
      mutationFn: (place: Held) =>
        client.booking.release.mutate({ jobId: place.jobId, version: place.version }),
      onSuccess: () => setHeld(null),
      onSettled: () => queries.invalidateQueries(),
    }),
  )

  const failure = hold.error ?? confirm.error ?? release.error
  return {
    held,
    hold,
    confirm,
    release,
    fault: failure ? faultOf(failure) : null,
    reset: () => setHeld(null),
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
