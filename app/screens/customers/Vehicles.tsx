import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { CustomerView, VehicleView } from '../../../main/api/views.ts'
import { say, withinSentence } from '../../../main/domain/language/index.ts'
import { useEditing } from '../../data/editing.ts'
import { trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { finishChoices, labelOf, paintChoices, sizeChoices } from '../../parts/shopWords.ts'
import { fullDateWords } from '../../parts/time.ts'
import { useBookFor } from '../book/useBookFor.ts'
import styles from './Customers.module.css'
import { VehicleForm } from './VehicleForm.tsx'

/** A customer's cars, each with its page to change it. */
export function Vehicles({ customer }: { customer: CustomerView }) {
  const { editing, edit, close } = useEditing()
  const bookFor = useBookFor()
  // The only one is booked with the button at the head of the page.
  const inUse = customer.vehicles.filter(({ archivedAt }) => archivedAt === null)
  const chosen = customer.vehicles.find(vehicle => vehicle.id === editing)
  return (
    <Card title={say('Cars')}>
      {customer.vehicles.length === 0 && editing === null && (
        <p className={pieces.soft}>
          {say('No car yet. Its size and finish decide what each step takes and what it may not get.')}
        </p>
      )}
      <ul className={pieces.list}>
        {customer.vehicles.map(vehicle => (
          <li key={vehicle.id}>
            <span className={styles.plate}>{vehicle.plate || say('no plate')}</span>
            <span className={pieces.grow}>
              {carWords(vehicle)}
              <small>
                {[
                  labelOf(sizeChoices, vehicle.sizeClass),
                  withinSentence(labelOf(finishChoices, vehicle.finish)),
                  vehicle.paint !== 'unknown' && withinSentence(labelOf(paintChoices, vehicle.paint)),
                  vehicle.archivedAt !== null && say('archived'),
                ]
                  .filter(Boolean)
                  .join(', ')}
                {vehicle.note && ` · ${vehicle.note}`}
              </small>
            </span>
            {inUse.length > 1 && vehicle.archivedAt === null && (
              <RowButton
                does={say('Book||a visit')}
                of={nameOf(vehicle)}
                onClick={() => void bookFor(customer.id, vehicle.id)}
              />
            )}
            <Button
              variant="default"
              size="compact-sm"
              renderRoot={props => <Link to="/cars/$id" params={{ id: vehicle.id }} {...props} />}
              aria-label={say('Upkeep of {vehicle}', { vehicle: nameOf(vehicle) })}
            >
              {say('Upkeep')}
            </Button>
            <Button
              variant="default"
              size="compact-sm"
              renderRoot={props => (
                <Link to="/money/$section/$id" params={{ section: 'newQuote', id: vehicle.id }} {...props} />
              )}
              aria-label={say('Quote for {vehicle}', { vehicle: nameOf(vehicle) })}
            >
              {say('Quote')}
            </Button>
            <RowButton does={say('Change')} of={nameOf(vehicle)} onClick={edit(vehicle.id)} />
          </li>
        ))}
      </ul>
      {customer.formerCars.length > 0 && (
        <ul className={pieces.list} aria-label={say('Cars that were theirs')}>
          {customer.formerCars.map(({ id, vehicleId, carName, onDay, toId, toName }) => (
            <li key={id} className={pieces.soft}>
              <span className={pieces.grow}>
                <Say
                  text="{car} until {onDay}, since then {owner}"
                  values={{
                    car: (
                      <Link to="/cars/$id" params={{ id: vehicleId }}>
                        {carName}
                      </Link>
                    ),
                    onDay: fullDateWords(onDay),
                    owner: (
                      <Link to="/customers/$id" params={{ id: toId }}>
                        {toName}
                      </Link>
                    ),
                  }}
                />
              </span>
            </li>
          ))}
        </ul>
      )}
      {editing === null && customer.archivedAt === null && (
        <Button mt="sm" variant="default" onClick={edit('new')}>
          {say('Add a car')}
        </Button>
      )}
      {editing !== null && (
        <>
          <VehicleForm key={editing} customerId={customer.id} vehicle={chosen} onDone={close} />
          {chosen && <ArchiveButton row={chosen} api={trpc.vehicles} label={say('Archive this car')} />}
        </>
      )}
    </Card>
  )
}

const nameOf = (vehicle: VehicleView) => vehicle.plate || carWords(vehicle)

function carWords(vehicle: VehicleView): string {
  return (
    [vehicle.colour, vehicle.make, vehicle.model, vehicle.year ?? ''].filter(Boolean).join(' ') ||
    say('Make and model not noted')
  )
}
