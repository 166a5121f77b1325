import { Select, Text, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import { type Condition, conditions, gridChoices } from '../../../main/domain/shop/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import { DecimalInput, PhoneInput } from '../../parts/inputs.tsx'
import { countryChoices, currencyChoices, zoneChoices } from '../../parts/placeChoices.ts'
import { Heading } from './Heading.tsx'
import styles from './Settings.module.css'

const conditionWords: Record<Condition, string> = {
  good: 'Paint in good condition',
  worn: 'Worn paint',
  heavy: 'Heavily marred paint',
}

/** The shop itself: name, place, money, measures, and the rules a promise follows. */
export function ShopSection() {
  const { demo, ...saved } = useShop()
  const form = useForm({
    saved,
    version: saved.version,
    saving: trpc.shop.update.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const { value: shop, change, faults } = form
  const [zones] = useState(() => zoneChoices(shop.zone))
  const [countries] = useState(countryChoices)
  const [currencies] = useState(currencyChoices)
  return (
    <>
      <Heading title="Shop">
        Where the shop is and what it counts in. The zone and the grid decide what every promise means.
      </Heading>
      {demo && (
        <Text className={styles.card}>
          This is the demo shop: everything in it is invented. Your own shop goes into a data folder of its
          own; start Lustrum with --data and another folder.
        </Text>
      )}
      <div className={styles.card}>
        <Form form={form} label="Shop">
          <div className={styles.fields}>
            <TextInput label="Name" className={styles.whole} maw={480} {...form.field('name')} />
            <Select label="Time zone" searchable data={zones} {...form.choice('zone')} />
            <Select label="Country" searchable data={countries} {...form.choice('country')} />
            <Select label="Money" searchable data={currencies} {...form.choice('currency')} />
            <Select
              label="Measures"
              data={[
                { value: 'metric', label: 'Metric: °C, mL, µm' },
                { value: 'us', label: 'US: °F, fl oz, mil' },
              ]}
              {...form.choice('units')}
            />
            <PhoneInput label="Phone" {...form.optional('phone')} />
            <TextInput label="E-mail" type="email" {...form.optional('email')} />
            <Textarea
              label="Address"
              autosize
              minRows={2}
              className={styles.whole}
              maw={480}
              {...form.optional('address')}
            />
          </div>
          <h3>What a promise follows</h3>
          <div className={styles.fields}>
            <Select
              label="Booking grid"
              description="Starts and handovers fall on it"
              allowDeselect={false}
              data={gridChoices.map(minutes => ({ value: String(minutes), label: `${minutes} minutes` }))}
              value={String(shop.gridMin)}
              onChange={minutes => minutes && change({ gridMin: Number(minutes) })}
              error={faults.at('gridMin')}
            />
            <Select
              label="A car may go home"
              description="What counts of a cure profile"
              data={[
                { value: 'minimum', label: 'at the least time' },
                { value: 'advised', label: 'at the advised time' },
              ]}
              {...form.choice('handoverRule')}
            />
            {conditions.map(condition => (
              <DecimalInput
                key={condition}
                label={conditionWords[condition]}
                description="Times the usual hands-on minutes"
                unit="×"
                most={20}
                value={shop.conditionFactors[condition]}
                onChange={factor =>
                  change({ conditionFactors: { ...shop.conditionFactors, [condition]: factor } })
                }
                error={faults.at(`conditionFactors.${condition}`)}
              />
            ))}
          </div>
        </Form>
      </div>
    </>
  )
}
