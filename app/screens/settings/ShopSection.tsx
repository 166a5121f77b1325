import { Select, Text, Textarea, TextInput } from '@mantine/core'
import { type OutsideUsual, outsideSeasons } from '../../../main/domain/cure/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { type Condition, conditions, gridChoices } from '../../../main/domain/shop/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { DecimalInput, PhoneInput } from '../../parts/inputs.tsx'
import { PlaceFields } from '../../parts/PlaceFields.tsx'
import pieces from '../../parts/pieces.module.css'
import { FormatFields } from './FormatFields.tsx'
import { Heading } from './Heading.tsx'

const conditionWords: Record<Condition, string> = {
  good: say('Paint in good condition'),
  worn: say('Worn paint'),
  heavy: say('Heavily marred paint'),
}

const seasonWords: Record<keyof OutsideUsual, string> = {
  decFeb: say('December to February'),
  marMay: say('March to May'),
  junAug: say('June to August'),
  sepNov: say('September to November'),
}

/** The four seasons with one changed; emptied, none is known. The first one typed stands for all until they are typed. */
function withSeason(
  usual: OutsideUsual | null,
  season: keyof OutsideUsual,
  celsius: number | null,
): OutsideUsual | null {
  if (celsius === null) return null
  const all = usual ?? { decFeb: celsius, marMay: celsius, junAug: celsius, sepNov: celsius }
  return { ...all, [season]: celsius }
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
  const factors = form.within('conditionFactors')
  return (
    <>
      <Heading title={say('Shop')}>
        {say(
          'Where the shop is, and its money and measures. Time zone and booking grid apply to every promise.',
        )}
      </Heading>
      {demo && (
        <Text className={pieces.card}>
          {say(
            'This is the demo shop: everything in it is invented. Your own shop goes into a data folder of its own; start Lustrum with --data and another folder.',
          )}
        </Text>
      )}
      <div className={pieces.card}>
        <Form form={form} label={say('Shop')}>
          <div className={pieces.fields}>
            <TextInput label={say('Name')} className={pieces.whole} maw={480} {...form.field('name')} />
            <PlaceFields form={form} />
            <PhoneInput label={say('Phone')} {...form.optional('phone')} />
            <TextInput label={say('E-mail')} type="email" {...form.optional('email')} />
            <Textarea
              label={say('Address')}
              autosize
              minRows={2}
              className={pieces.whole}
              maw={480}
              {...form.optional('address')}
            />
          </div>
          <h3>{say('How times and dates are written')}</h3>
          <div className={pieces.fields}>
            <FormatFields shop={shop} change={change} />
          </div>
          <h3>{say('What promises go by')}</h3>
          <div className={pieces.fields}>
            <Select
              label={say('Booking grid')}
              description={say('Starts and handovers fall on it')}
              allowDeselect={false}
              data={gridChoices.map(minutes => ({
                value: String(minutes),
                label: say('{minutes} minutes', { minutes }),
              }))}
              value={String(shop.gridMin)}
              onChange={minutes => minutes && change({ gridMin: Number(minutes) })}
              error={faults.at('gridMin')}
            />
            <Select
              label={say('A car can go home')}
              description={say('What counts of a cure profile')}
              data={[
                { value: 'minimum', label: say('at the earliest pick-up') },
                { value: 'advised', label: say('at the recommended pick-up') },
              ]}
              {...form.choice('handoverRule')}
            />
            {conditions.map(condition => (
              <DecimalInput
                key={condition}
                label={conditionWords[condition]}
                description={say('Times the usual hands-on minutes; a rule of thumb until you set it')}
                unit="×"
                most={20}
                {...factors.field(condition)}
              />
            ))}
          </div>
          <h3>{say('Usual temperature outside, for what owners are told')}</h3>
          <div className={pieces.fields}>
            {outsideSeasons.map(season => (
              <DegreesInput
                key={season}
                label={seasonWords[season]}
                value={shop.outsideUsual?.[season] ?? null}
                onChange={celsius => change({ outsideUsual: withSeason(shop.outsideUsual, season, celsius) })}
                error={faults.at('outsideUsual')}
              />
            ))}
          </div>
        </Form>
      </div>
    </>
  )
}
