import { Select, Text, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import {
  type Condition,
  conditions,
  gridChoices,
  type HandoverRule,
  type UnitSystem,
} from '../../../main/domain/shop/index.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
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
  const draft = useDraft(saved, saved.version)
  const shop = draft.value
  const saving = useSaving(trpc.shop.update.mutationOptions())
  const faults = faultsOf(saving.error)
  const [zones] = useState(() => zoneChoices(shop.zone))
  const [countries] = useState(countryChoices)
  const [currencies] = useState(currencyChoices)
  const save = () => saving.save(shop, draft.settle)
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
        <Form error={saving.error} label="Shop" onSave={save}>
          <div className={styles.fields}>
            <TextInput
              label="Name"
              className={styles.whole}
              maw={480}
              value={shop.name}
              onChange={event => draft.change({ name: event.currentTarget.value })}
              error={faults.at('name')}
            />
            <Select
              label="Time zone"
              searchable
              allowDeselect={false}
              data={zones}
              value={shop.zone}
              onChange={zone => zone && draft.change({ zone })}
              error={faults.at('zone')}
            />
            <Select
              label="Country"
              searchable
              allowDeselect={false}
              data={countries}
              value={shop.country}
              onChange={country => country && draft.change({ country })}
              error={faults.at('country')}
            />
            <Select
              label="Money"
              searchable
              allowDeselect={false}
              data={currencies}
              value={shop.currency}
              onChange={currency => currency && draft.change({ currency })}
              error={faults.at('currency')}
            />
            <Select
              label="Measures"
              allowDeselect={false}
              data={[
                { value: 'metric', label: 'Metric: °C, mL, µm' },
                { value: 'us', label: 'US: °F, fl oz, mil' },
              ]}
              value={shop.units}
              onChange={units => units && draft.change({ units: units as UnitSystem })}
              error={faults.at('units')}
            />
            <PhoneInput
              label="Phone"
              value={shop.phone ?? ''}
              onChange={phone => draft.change({ phone: phone || null })}
              error={faults.at('phone')}
            />
            <TextInput
              label="E-mail"
              type="email"
              value={shop.email ?? ''}
              onChange={event => draft.change({ email: event.currentTarget.value || null })}
              error={faults.at('email')}
            />
            <Textarea
              label="Address"
              autosize
              minRows={2}
              className={styles.whole}
              maw={480}
              value={shop.address ?? ''}
              onChange={event => draft.change({ address: event.currentTarget.value || null })}
              error={faults.at('address')}
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
              onChange={minutes => minutes && draft.change({ gridMin: Number(minutes) })}
              error={faults.at('gridMin')}
            />
            <Select
              label="A car may go home"
              description="What counts of a cure profile"
              allowDeselect={false}
              data={[
                { value: 'minimum', label: 'at the least time' },
                { value: 'advised', label: 'at the advised time' },
              ]}
              value={shop.handoverRule}
              onChange={rule => rule && draft.change({ handoverRule: rule as HandoverRule })}
              error={faults.at('handoverRule')}
            />
            {conditions.map(condition => (
              <DecimalInput
                key={condition}
                label={conditionWords[condition]}
                description="Times the usual hands-on minutes"
                unit="×"
                value={shop.conditionFactors[condition]}
                onChange={factor =>
                  draft.change({ conditionFactors: { ...shop.conditionFactors, [condition]: factor } })
                }
                error={faults.at(`conditionFactors.${condition}`)}
              />
            ))}
          </div>
          <FormFoot
            faults={faults}
            busy={saving.busy}
            dirty={draft.dirty}
            outdated={draft.outdated}
            onReload={() => {
              saving.reset()
              draft.reload()
            }}
          />
        </Form>
      </div>
    </>
  )
}
