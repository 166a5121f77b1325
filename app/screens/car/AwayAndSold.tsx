import { Button, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import type { Acts } from '../upkeep/useActs.tsx'
import { NewOwner } from './NewOwner.tsx'

/** The car cannot come for a while, comes no more, or is somebody else’s. */
export function AwayAndSold({ car, acts }: { car: CarView; acts: Acts }) {
  const [form, setForm] = useState<'away' | 'sold' | 'hands' | null>(null)
  return (
    <Card title={say('Away and sold')}>
      <div className={pieces.column}>
        {car.away.length > 0 && (
          <ul>
            {car.away.map(away => (
              <li key={away.actId}>
                {say('away from {from}, back on {to}', {
                  from: fullDateWords(away.from),
                  to: fullDateWords(away.to),
                })}
                {away.why && ` (${away.why})`}
              </li>
            ))}
          </ul>
        )}
        {form === null && (
          <Group>
            {car.soldOn === null && (
              <>
                <Button variant="default" onClick={() => setForm('away')}>
                  {say('It is away for a while')}
                </Button>
                <Button variant="default" onClick={() => setForm('sold')}>
                  {say('It was sold')}
                </Button>
              </>
            )}
            <Button variant="default" onClick={() => setForm('hands')}>
              {say('It has a new owner')}
            </Button>
          </Group>
        )}
        {car.soldOn !== null && (
          <p className={pieces.soft}>
            {say(
              'Sold on {soldOn}: nothing falls due for it and nothing is written about it. Take the sale back under What happened, if it was entered wrongly.',
              { soldOn: fullDateWords(car.soldOn) },
            )}
          </p>
        )}
        {form === null && car.owners[0] && <HandsBack car={car} last={car.owners[0]} />}
        {form === 'away' && <AwayForm car={car} acts={acts} onDone={() => setForm(null)} />}
        {form === 'hands' && <NewOwner car={car} onDone={() => setForm(null)} />}
        {form === 'sold' && <SoldForm car={car} acts={acts} onDone={() => setForm(null)} />}
      </div>
    </Card>
  )
}

/** The last change of hands, and its way back. */
function HandsBack({ car, last }: { car: CarView; last: CarView['owners'][number] }) {
  const undoing = useSaving(trpc.vehicles.takeHandsBack.mutationOptions())
  return (
    <div>
      <p className={pieces.soft}>
        {say('From {fromName} to {toName} on {onDay}.', {
          fromName: last.fromName,
          toName: last.toName,
          onDay: fullDateWords(last.onDay),
        })}
      </p>
      <Refused of={undoing.error} />
      <Button
        variant="default"
        size="compact-sm"
        loading={undoing.busy}
        onClick={() => undoing.save({ id: car.vehicleId, version: car.version })}
      >
        {say('Take the change of owner back')}
      </Button>
    </div>
  )
}

interface FormProps {
  car: CarView
  acts: Acts
  onDone(): void
}

function AwayForm({ car, acts, onDone }: FormProps) {
  const form = useForm({
    saved: {
      from: car.today,
      to: Temporal.PlainDate.from(car.today).add({ months: 4 }).toString(),
      why: '',
    },
    saving: trpc.upkeep.away.mutationOptions(),
    send: value => ({ ...value, vehicleId: car.vehicleId }),
    done: act => {
      acts.done(act)
      onDone()
    },
  })
  const { faults } = form
  return (
    <Form form={form} label={say('It is away for a while')} save={say('Save the absence')} onCancel={onDone}>
      <div className={pieces.fields}>
        <DateField
          label={say('First day away')}
          {...form.field('from')}
          error={faults.at('from') ?? faults.at('away.0.from')}
        />
        <DateField
          label={say('First day back')}
          {...form.field('to')}
          error={faults.at('to') ?? faults.at('away.0.to')}
        />
        <TextInput label={say('Why')} placeholder={say('laid up for the winter')} {...form.field('why')} />
      </div>
    </Form>
  )
}

function SoldForm({ car, acts, onDone }: FormProps) {
  const form = useForm({
    saved: { on: car.today },
    saving: trpc.upkeep.sold.mutationOptions(),
    send: value => ({ ...value, vehicleId: car.vehicleId }),
    done: act => {
      acts.done(act)
      onDone()
    },
  })
  return (
    <Form form={form} label={say('It was sold')} save={say('Mark it sold')} onCancel={onDone}>
      <p className={pieces.soft}>
        {say(
          'Nothing falls due for this car from that day on, and what waits to be sent about it is withdrawn.',
        )}
      </p>
      <div className={pieces.fields}>
        <DateField label={say('Sold on')} {...form.field('on')} />
      </div>
    </Form>
  )
}
