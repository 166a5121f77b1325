import { Button, Group, Input, MultiSelect, SegmentedControl, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import type { Condition, Scope } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { scopeWords } from '../../../../main/domain/shop/index.ts'
import { useForm } from '../../../data/form.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Lookup } from '../../../parts/Lookup.tsx'
import { OnTop, type OnTopValue } from '../../../parts/OnTop.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { choicesFrom, choicesOf } from '../../../parts/shopWords.ts'
import styles from './Quotes.module.css'

interface Variant extends OnTopValue {
  name: string
  treatmentIds: string[]
}

const emptyVariant = (name: string): Variant => ({
  name,
  treatmentIds: [],
  extraKeys: [],
  discount: { percent: '', reason: '' },
})

/** A discount goes as it was typed, so that one without its reason is refused and not left out. */
function sent({ extraKeys, discount, ...variant }: Variant) {
  const percent = discount.percent.trim().replace(',', '.')
  const given = { treatmentId: null, amountMinor: null, percent, reason: discount.reason }
  return {
    ...variant,
    extras: extraKeys.map(key => ({ key, quantity: '1' })),
    discounts: percent === '' ? [] : [given],
  }
}

const conditions = [
  { value: 'good', label: say('Good') },
  { value: 'worn', label: say('Worn') },
  { value: 'heavy', label: say('Heavy') },
] as const

const names = [say('Good'), say('Better'), say('Best')] as const

/** What of it is chosen, while it is shut away. */
function onTopWords({ extraKeys, discount }: Variant): string {
  return [
    extraKeys.length > 0 && say('{n, plural, one {1 extra} other {# extras}}', { n: extraKeys.length }),
    discount.percent.trim() && say('{percent} % off', { percent: discount.percent.trim() }),
  ]
    .filter(Boolean)
    .join(', ')
}

/** Up to three ways to treat a car on file, to be worked out and laid side by side. */
export function NewQuote({ id: vehicleId = '' }: SectionProps) {
  const go = useNavigate()
  const sold = useQuery(trpc.treatments.list.queryOptions()).data
  const currency = useShop().currency
  const { data: car, error } = useQuery(trpc.upkeep.car.queryOptions({ vehicleId }))
  const form = useForm({
    saved: {
      condition: 'good' as Condition,
      scope: 'whole' as Scope,
      note: '',
      variants: [emptyVariant(say('Good'))],
    },
    saving: trpc.money.makeQuote.mutationOptions(),
    send: value => ({ ...value, variants: value.variants.map(sent), vehicleId }),
    done: ({ id }) => void go({ to: '/money/$section/$id', params: { section: 'quotes', id } }),
  })
  const { value, change } = form
  if (error)
    return <Lookup error={error} what={say('the car')} to="/customers" label={say('All customers')} />
  return (
    <>
      <ScreenTitle title={say('New quote')}>
        {car && (
          <span>
            <Link to="/cars/$id" params={{ id: vehicleId }}>
              {[car.plate, car.vehicleWords].filter(Boolean).join(', ')}
            </Link>
            {' · '}
            <Link to="/customers/$id" params={{ id: car.customerId }}>
              {car.customerName}
            </Link>
          </span>
        )}
      </ScreenTitle>
      <Card>
        <Form
          form={form}
          label={say('New quote')}
          save={say('Work it out')}
          ready={value.variants.every(each => each.treatmentIds.length > 0)}
          more={
            value.variants.length < 3 && (
              <Button
                variant="default"
                onClick={() =>
                  change({
                    variants: [...value.variants, emptyVariant(names[value.variants.length] ?? '')],
                  })
                }
              >
                {say('Add a variant')}
              </Button>
            )
          }
        >
          <Group>
            <SegmentedControl
              aria-label={say('Condition of the paint')}
              data={[...conditions]}
              value={value.condition}
              onChange={condition => change({ condition })}
            />
            <SegmentedControl
              aria-label={say('How much of the paint')}
              data={choicesFrom(scopeWords).map(({ value, label }) => ({ value, label: say(label) }))}
              value={value.scope}
              onChange={scope => change({ scope })}
            />
          </Group>
          {form.each<Variant>('variants').map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a variant is its place
            <div key={i} className={styles.asked}>
              <TextInput label={say('Variant {i}', { i: i + 1 })} {...row.field('name')} />
              <MultiSelect
                label={say('Treatments of variant {i}', { i: i + 1 })}
                data={choicesOf(sold)}
                {...row.field('treatmentIds')}
              />
              <div className={styles.onTop}>
                <OnTop
                  value={row.value}
                  change={part => change({ variants: value.variants.with(i, { ...row.value, ...part }) })}
                  currency={currency}
                  position="bottom-start"
                  label={say('Extras and discount of variant {i}', { i: i + 1 })}
                />
                <small className={pieces.soft}>{onTopWords(row.value)}</small>
                {/* In words beside it: what is refused lies in a field that is shut away. */}
                <Input.Error>
                  {form.faults.at(`variants.${i}.discounts.0.percent`) ??
                    form.faults.at(`variants.${i}.discounts.0.reason`)}
                </Input.Error>
              </div>
            </div>
          ))}
          <Textarea label={say('Note on it')} autosize minRows={1} {...form.field('note')} />
        </Form>
      </Card>
    </>
  )
}
