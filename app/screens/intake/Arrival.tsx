import { Checkbox, Group, NativeSelect, Textarea } from '@mantine/core'
import type { IntakeDraft } from '../../../main/api/views.ts'
import type { WaxState } from '../../../main/domain/intake/words.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { Fields } from '../../data/fields.ts'
import { Card } from '../../parts/Card.tsx'
import { Chip } from '../../parts/Chip.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './Intake.module.css'

const fuel = [say('Empty'), '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞', say('Full')]
const wax: Readonly<Record<WaxState, string>> = {
  'not asked': say('Not asked'),
  none: say('None'),
  waxed: say('Waxed or sealed'),
}

/** What comes with the car, and what its paint carries. */
export function Arrival({ fields }: { fields: Fields<IntakeDraft> }) {
  const { value: draft } = fields
  const wear = fields.field('wax')
  return (
    <Card title={say('With the car')}>
      <div className={pieces.fields}>
        <Group gap="xs" align="flex-end" wrap="nowrap">
          <OptionalDecimalInput
            label={say('Odometer')}
            least={0}
            most={9_999_999}
            whole
            w="100%"
            {...fields.field('odometer')}
          />
          <NativeSelect
            aria-label={say('Odometer in')}
            data={['km', 'mi']}
            w={104}
            value={draft.odometerUnit}
            onChange={event =>
              fields.field('odometerUnit').onChange(event.currentTarget.value as 'km' | 'mi')
            }
          />
        </Group>
        <NativeSelect
          label={say('Fuel or charge')}
          data={[
            { value: '', label: say('not looked at') },
            ...fuel.map((label, i) => ({ value: String(i), label })),
          ]}
          value={draft.fuelEighths === null ? '' : String(draft.fuelEighths)}
          onChange={event =>
            fields
              .field('fuelEighths')
              .onChange(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))
          }
        />
        <OptionalDecimalInput
          label={say('Keys||of the car')}
          least={0}
          most={50}
          whole
          {...fields.field('keys')}
        />
        <DegreesInput label={say('Air')} {...fields.field('airC')} />
        <DegreesInput label={say('Panel||its temperature')} {...fields.field('panelC')} />
      </div>
      <fieldset className={styles.chips} aria-label={say('Wax or sealant on the paint')}>
        <legend>{say('Wax or sealant on the paint')}</legend>
        {(Object.keys(wax) as WaxState[]).map(state => (
          <Chip
            key={state}
            type="radio"
            name="wax"
            label={wax[state]}
            checked={wear.value === state}
            onChange={() => wear.onChange(state)}
          />
        ))}
      </fieldset>
      <div className={pieces.two}>
        <Textarea
          label={say('Belongings left in it')}
          maxLength={1_000}
          autosize
          minRows={2}
          {...fields.field('belongings')}
        />
        <Textarea label={say('Note')} maxLength={2_000} autosize minRows={2} {...fields.field('note')} />
      </div>
      <Checkbox
        mt="sm"
        label={say('Gone over with the owner: the damage marked here is agreed')}
        {...fields.tick('damageAgreed')}
      />
    </Card>
  )
}
