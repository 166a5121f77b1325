import { Alert, Select } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { Channel } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import styles from '../Upkeep.module.css'

interface Props {
  words: { subject: string; body: string }
  language: string
  channel: Channel
}

/** The words as they would reach the owner of a real car, while they are written. */
export function Preview({ words, language, channel }: Props) {
  const [text, setText] = useState('')
  const [vehicleId, setVehicleId] = useState<string | null>(null)
  const [asked] = useDebouncedValue(text, 150)
  const [typed] = useDebouncedValue(words, 250)
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked, limit: 20 }),
    placeholderData: before => before,
  })
  const cars = (found.data?.customers ?? []).flatMap(customer =>
    customer.vehicles.map(car => ({
      value: car.id,
      label: `${car.plate || say('no plate')}, ${customer.name}`,
    })),
  )
  const car = vehicleId ?? cars[0]?.value ?? null
  const preview = useQuery({
    ...trpc.templates.preview.queryOptions({ words: typed, vehicleId: car ?? '', language }),
    enabled: car !== null && typed.body.trim() !== '',
    placeholderData: before => before,
    retry: false,
  })
  const seen = preview.data
  return (
    <Card title={say('With a real car')}>
      <div className={pieces.column}>
        <Select
          label={say('Car')}
          placeholder={say('plate or name')}
          searchable
          data={cars}
          value={car}
          onChange={setVehicleId}
          onSearchChange={setText}
          filter={({ options }) => options}
          nothingFoundMessage={say('No car found.')}
        />
        {car === null && (
          <p className={pieces.soft}>
            {say('Enter a customer with a car, and their values are shown in these words.')}
          </p>
        )}
        <Refused of={preview.error} />
        {seen && !preview.error && (
          <div aria-live="polite" className={pieces.column}>
            {seen.unfilled.length > 0 ? (
              <Alert color="orange" variant="outline" title={say('Not filled')}>
                {say(
                  'Nothing is known of this car for {unfilled}: ____ stands in its place, and such a message is not sent until it is edited.',
                  { unfilled: seen.unfilled.map(name => `{{${name}}}`).join(', ') },
                )}
              </Alert>
            ) : (
              <p className={pieces.kept}>{say('✓ Every field is filled for this car.')}</p>
            )}
            <div className={styles.letter} lang={seen.language}>
              {channel === 'text' ? '' : `${seen.subject}\n\n`}
              {seen.body}
            </div>
            <p className={pieces.soft}>
              {say('The two times are examples: a real reminder holds two real slots from the board.')}
            </p>
          </div>
        )}
      </div>
    </Card>
  )
}
