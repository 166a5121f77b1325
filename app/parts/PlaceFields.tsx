import { Select } from '@mantine/core'
import { useState } from 'react'
import type { ShopView } from '../../main/api/views.ts'
import { type Language, languages, say } from '../../main/domain/language/index.ts'
import type { Fields } from '../data/fields.ts'
import { countryChoices, currencyChoices, zoneChoices } from './placeChoices.ts'

interface Props {
  form: Fields<Pick<ShopView, 'zone' | 'country' | 'currency' | 'units' | 'language'>>
}

/** Each in its own words: whoever cannot read the screens finds theirs. */
const languageNames: Record<Language, string> = { en: 'English', de: 'Deutsch' }

/** Where a shop is and what it counts in. */
export function PlaceFields({ form }: Props) {
  const zone = form.choice('zone')
  const [zones] = useState(() => zoneChoices(zone.value))
  const [countries] = useState(countryChoices)
  const [currencies] = useState(currencyChoices)
  return (
    <>
      <Select label={say('Time zone')} searchable data={zones} {...zone} />
      <Select
        label={say('Country')}
        description={say('How phone numbers, times and dates are written')}
        searchable
        data={countries}
        {...form.choice('country')}
      />
      <Select label={say('Money||the currency')} searchable data={currencies} {...form.choice('currency')} />
      <Select
        label={say('Measures')}
        data={[
          { value: 'metric', label: say('Metric: °C, mL, µm') },
          { value: 'us', label: say('US: °F, fl oz, mil') },
        ]}
        {...form.choice('units')}
      />
      <Select
        label={say('Language of the screens')}
        data={languages.map(language => ({ value: language, label: languageNames[language] }))}
        {...form.choice('language')}
      />
    </>
  )
}
