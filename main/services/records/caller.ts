import { withField } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import type { Audit } from '../desk/desk.ts'
import { writeCustomer } from './customers.ts'
import type { CallerInput } from './inputs.ts'
import { vehicleInUse, writeVehicle } from './vehicles.ts'

/**
 * The vehicle a caller wants booked. A new customer and a new car are written down in the act that books them, so that a
 * refused plate or a place just taken leaves neither behind.
 * @throws Refusal with its field under `customer` or `vehicle`.
 */
export async function callersVehicle(tx: Tx, audit: Audit, at: number, caller: CallerInput) {
  if ('vehicleId' in caller) return vehicleInUse(tx, caller.vehicleId)
  const { vehicle } = caller
  const customerId =
    'customerId' in caller
      ? caller.customerId
      : (await under('customer', writeCustomer(tx, audit, { ...caller.customer, accepted: caller.accepted })))
          .id
  const { id } = await under('vehicle', writeVehicle(tx, audit, at, { ...vehicle, customerId }))
  return vehicleInUse(tx, id)
}

async function under<T>(part: string, writing: Promise<T>): Promise<T> {
  try {
    return await writing
  } catch (error) {
    throw withField(error, field => (field === 'customerId' ? field : `${part}.${field}`))
  }
}
