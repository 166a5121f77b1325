import { Button, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { DateField } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import type { Acts } from '../upkeep/useActs.tsx'
import { NewOwner } from './NewOwner.tsx'

/** The car cannot come for a while, comes no more, or is somebody else’s. */
export function AwayAndSold({ car, acts }: { car: CarView; acts: Acts }) {
  const [form, setForm] = useState<'away' | 'sold' | 'hands' | null>(null)
  return (
    <Card title="Away and sold">
      <div className={pieces.column}>
        {car.away.length > 0 && (
          <ul>
            {car.away.map(away => (
              <li key={away.actId}>
                away from {fullDateWords(away.from)}, back on {fullDateWords(away.to)}
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
                  It is away for a while
                </Button>
                <Button variant="default" onClick={() => setForm('sold')}>
                  It was sold
                </Button>
              </>
            )}
            <Button variant="default" onClick={() => setForm('hands')}>
              It has a new owner
            </Button>
          </Group>
        )}
        {car.soldOn !== null && (
          <p className={pieces.soft}>
            Sold on {fullDateWords(car.soldOn)}: nothing falls due for it and nothing is written about it.
            Take the sale back in its life above, if it was entered wrongly.
          </p>
        )}
        {form === 'away' && <AwayForm car={car} acts={acts} onDone={() => setForm(null)} />}
        {form === 'hands' && <NewOwner car={car} onDone={() => setForm(null)} />}
        {form === 'sold' && <SoldForm car={car} acts={acts} onDone={() => setForm(null)} />}
      </div>
    </Card>
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
    <Form form={form} label="It is away for a while" save="Save the absence" onCancel={onDone}>
      <div className={pieces.fields}>
        <DateField
          label="First day away"
          {...form.field('from')}
          error={faults.at('from') ?? faults.at('away.0.from')}
        />
        <DateField
          label="First day back"
          {...form.field('to')}
          error={faults.at('to') ?? faults.at('away.0.to')}
        />
        <TextInput label="Why" placeholder="laid up for the winter" {...form.field('why')} />
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
    <Form form={form} label="It was sold" save="Mark it sold" onCancel={onDone}>
      <p className={pieces.soft}>
        Nothing falls due for this car from that day on, and what waits to be sent about it is withdrawn.
      </p>
      <div className={pieces.fields}>
        <DateField label="Sold on" {...form.field('on')} />
      </div>
    </Form>
  )
}
