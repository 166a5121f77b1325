import { useNavigate } from '@tanstack/react-router'
import { useNowAt } from '../../data/now.ts'
import { client } from '../../data/trpc.ts'
import { callerOf } from './CarsOf.tsx'
import { carCall, keepCall, keptCall } from './call.ts'

/** Goes to Book with a customer and their car chosen, and the day they are to come where one is known. */
export function useBookFor() {
  const navigate = useNavigate()
  const nowAt = useNowAt()
  return async (customerId: string, vehicleId: string, onDay: string | null = null) => {
    if (nowAt === null) return
    const customer = await client.customers.get.query({ id: customerId })
    const vehicle = customer.vehicles.find(({ id }) => id === vehicleId)
    keepCall(localStorage, carCall(keptCall(localStorage, nowAt), callerOf(customer, vehicle), onDay), nowAt)
    await navigate({ to: '/book' })
  }
}
