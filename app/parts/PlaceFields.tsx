import { Select } from '@mantine/core'
import { useState } from 'react'
import type { ShopView } from '../../main/api/views.ts'
import type { Fields } from '../data/fields.ts'
import { countryChoices, currencyChoices, zoneChoices } from './placeChoices.ts'

interface Props {
  form: Fields<Pick<ShopView, 'zone' | 'country' | 'currency' | 'units'>>
}

/** Where a shop is and what it counts in. */
export function PlaceFields({ form }: Props) {
  const zone = form.choice('zone')
  const [zones] = useState(() => zoneChoices(zone.value))
  const [countries] = useState(countryChoices)
  const [currencies] = useState(currencyChoices)
  return (
    <>
      <Select label="Time zone" searchable data={zones} {...zone} />
      <Select
        label="Country"
        description="How phone numbers are read"
        searchable
        data={countries}
        {...form.choice('country')}
      />
      <Select label="Money" searchable data={currencies} {...form.choice('currency')} />
      <Select
        label="Measures"
        data={[
          { value: 'metric', label: 'Metric: °C, mL, µm' },
          { value: 'us', label: 'US: °F, fl oz, mil' },
        ]}
        {...form.choice('units')}
      />
    </>
  )
}
