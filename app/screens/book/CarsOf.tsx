import type { FoundCustomer } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { RowButton } from '../../parts/RowButton.tsx'
import styles from './Book.module.css'
import { type Call, nobody } from './call.ts'

/** The cars of somebody on file, each to be taken with one press, and room for another. */
export function CarsOf({ customer, change }: { customer: FoundCustomer; change(part: Partial<Call>): void }) {
  return (
    <span className={styles.acts}>
      {customer.vehicles.map(vehicle => (
        <RowButton
          key={vehicle.id}
          does={[vehicle.plate, vehicle.make, vehicle.model].filter(Boolean).join(' ')}
          onClick={() => change(callerOf(customer, vehicle))}
        />
      ))}
      <RowButton
        does={say('Another car')}
        variant="subtle"
        onClick={() => change(callerOf(customer, undefined))}
      />
    </span>
  )
}

/** Somebody found, with one of their cars, or with none yet. */
export function callerOf(
  { id, name }: Pick<FoundCustomer, 'id' | 'name'>,
  vehicle: Omit<FoundCustomer['vehicles'][number], 'customerId'> | undefined,
): Partial<Call> {
  const caller = { ...nobody, customerId: id, customerName: name }
  if (!vehicle) return caller
  const { id: vehicleId, plate, make, model, colour, sizeClass, finish } = vehicle
  return { ...caller, vehicleId, plate, make, model, colour, sizeClass, finish }
}
