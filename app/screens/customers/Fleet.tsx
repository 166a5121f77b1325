import { Button, Checkbox, Group, MultiSelect, Select, Stack } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { Condition, CustomerView, FleetHeldView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { OptionalDateField } from '../../parts/DateField.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import { choicesOf } from '../../parts/shopWords.ts'
import table from '../../parts/table.module.css'
import { fullWords } from '../../parts/time.ts'

const conditions = [
  { value: 'good' as const, label: say('Good') },
  { value: 'worn' as const, label: say('Worn') },
  { value: 'heavy' as const, label: say('Heavy') },
]

/** Several cars of one customer for the same work: a place each, held together, then booked together. */
export function Fleet({ customer }: { customer: CustomerView }) {
  const cars = customer.vehicles.filter(car => car.archivedAt === null)
  const [held, setHeld] = useState<FleetHeldView | null>(null)
  if (cars.length < 2 || customer.archivedAt !== null) return null
  return (
    <Card title={say('Book several cars')}>
      {held ? <Held held={held} onDone={() => setHeld(null)} /> : <Ask cars={cars} onHeld={setHeld} />}
    </Card>
  )
}

interface AskProps {
  cars: CustomerView['vehicles']
  onHeld(held: FleetHeldView): void
}

function Ask({ cars, onHeld }: AskProps) {
  const treatments = useQuery(trpc.treatments.list.queryOptions()).data ?? []
  const [vehicleIds, setVehicleIds] = useState<string[]>([])
  const [treatmentIds, setTreatmentIds] = useState<string[]>([])
  const [condition, setCondition] = useState<Condition>('good')
  const [notBefore, setNotBefore] = useState<string | null>(null)
  const holding = useSaving(trpc.booking.holdFleet.mutationOptions())
  const hold = () =>
    holding.save({ vehicleIds, treatmentIds, condition, ...(notBefore && { notBefore }) }, onHeld)
  return (
    <Stack gap="sm">
      <Checkbox.Group label={say('Cars')} value={vehicleIds} onChange={setVehicleIds}>
        <Group gap="sm" mt={4}>
          {cars.map(car => (
            <Checkbox
              key={car.id}
              value={car.id}
              label={car.plate || [car.colour, car.make, car.model].filter(Boolean).join(' ')}
            />
          ))}
        </Group>
      </Checkbox.Group>
      <MultiSelect
        label={say('What is done to each')}
        data={choicesOf(treatments)}
        value={treatmentIds}
        onChange={setTreatmentIds}
      />
      <Group gap="sm" align="flex-start">
        <Select
          label={say('Condition')}
          data={conditions}
          value={condition}
          allowDeselect={false}
          onChange={next => next && setCondition(next)}
        />
        <OptionalDateField label={say('Not before')} value={notBefore} onChange={setNotBefore} />
      </Group>
      <Refused of={holding.error} />
      <Group>
        <Button
          loading={holding.busy}
          disabled={vehicleIds.length === 0 || treatmentIds.length === 0}
          onClick={hold}
        >
          {say('Hold a place for each')}
        </Button>
        <span className={pieces.soft}>
          {say('In the order ticked, each as soon as possible around those before it.')}
        </span>
      </Group>
    </Stack>
  )
}

function Held({ held, onDone }: { held: FleetHeldView; onDone(): void }) {
  const { zone } = useShop()
  const booking = useSaving(trpc.booking.bookFleet.mutationOptions())
  const releasing = useSaving(trpc.booking.releaseFleet.mutationOptions())
  const places = held.places.map(({ jobId, version }) => ({ jobId, version }))
  return (
    <>
      <p>
        {say('Held until {heldUntilAt}, searched in this order: each car around those above it.', {
          heldUntilAt: fullWords(held.heldUntilAt, zone),
        })}
      </p>
      <Scrolled label={say('Book several cars')}>
        <table className={table.table}>
          <HeadRow columns={[say('Car'), say('Drop-off'), say('Pick-up'), say('Job')]} />
          <tbody>
            {held.places.map(place => (
              <tr key={place.jobId}>
                <td>{place.carName}</td>
                <td>{fullWords(place.dropOffAt, zone)}</td>
                <td>{fullWords(place.handoverAt, zone)}</td>
                <td>
                  <Link to="/jobs/$id" params={{ id: place.jobId }}>
                    {place.jobNumber}
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
      <Refused of={booking.error ?? releasing.error} />
      <Group mt="sm">
        <Button loading={booking.busy} onClick={() => booking.save({ places }, onDone)}>
          {say('Book them all')}
        </Button>
        <Button variant="default" loading={releasing.busy} onClick={() => releasing.save({ places }, onDone)}>
          {say('Release them')}
        </Button>
      </Group>
    </>
  )
}
