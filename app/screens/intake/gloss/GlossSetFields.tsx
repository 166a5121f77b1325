import { Button, Group, NativeSelect, TextInput } from '@mantine/core'
import type { GlossSetInput } from '../../../../main/api/views.ts'
import { substrates } from '../../../../main/domain/intake/words.ts'
import { decimalNow, say, sayKept } from '../../../../main/domain/language/index.ts'
import { geometries } from '../../../../main/domain/measure/index.ts'
import { panelNames } from '../../../../main/domain/shop/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import { OptionalDecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ReadInput } from '../../../parts/ReadInput.tsx'
import styles from '../Intake.module.css'

interface Props {
  number: number
  set: GlossSetInput
  warnings: readonly string[]
  change(part: Partial<GlossSetInput>): void
  onRemove(): void
  errorAt(name: string): string | undefined
}

/** One set: the meter, its tile before and after, and the readings panel by panel. */
export function GlossSetFields({ number, set, warnings, change, onRemove, errorAt }: Props) {
  const fields = fieldsOf(set, change, errorAt)
  const free = panelNames.filter(panel => !set.panels.some(each => each.panel === panel))
  return (
    <fieldset className={styles.set} aria-label={say('Gloss set {number}', { number })}>
      <div className={pieces.fields}>
        <TextInput label={say('Meter, serial number')} maxLength={80} {...fields.field('instrument')} />
        <TextInput label={say('Tile, serial number')} maxLength={80} {...fields.field('tile')} />
        <NativeSelect
          label={say('Surface')}
          data={substrates.map(value => ({ value, label: sayKept(value) }))}
          value={set.substrate}
          onChange={event => change({ substrate: event.currentTarget.value as GlossSetInput['substrate'] })}
        />
        <NativeSelect
          label={say('Angle')}
          data={geometries.map(angle => ({ value: String(angle), label: `${angle}°` }))}
          value={String(set.geometryDeg)}
          onChange={event =>
            change({ geometryDeg: Number(event.currentTarget.value) as GlossSetInput['geometryDeg'] })
          }
        />
        <OptionalDecimalInput
          label={say('Tile, as printed on it')}
          unit={say('GU')}
          least={0}
          most={2000}
          {...fields.field('tileGu')}
        />
        <OptionalDecimalInput
          label={say('Tile before the set')}
          unit={say('GU')}
          least={0}
          most={2000}
          {...fields.field('startGu')}
        />
        <OptionalDecimalInput
          label={say('Tile after the set')}
          unit={say('GU')}
          least={0}
          most={2000}
          {...fields.field('endGu')}
        />
      </div>
      <div className={pieces.fields}>
        {set.panels.map(({ panel, gu }) => (
          <ReadInput
            key={panel}
            label={say(panel)}
            inputMode="decimal"
            placeholder={say('such as 80 81 80.5')}
            value={gu}
            onChange={next =>
              change({ panels: set.panels.map(each => (each.panel === panel ? { panel, gu: next } : each)) })
            }
            read={readGloss}
            show={values => values.map(decimalNow).join('  ')}
            remedy={say('Write gloss readings such as 80 81 80.5, at most 20.')}
          />
        ))}
      </div>
      {warnings.map(words => (
        <p key={words} role="status" className={pieces.late}>
          ⚑ {words}
        </p>
      ))}
      <Group>
        {free.length > 0 && (
          <NativeSelect
            aria-label={say('Add a panel to gloss set {number}', { number })}
            data={[
              { value: '', label: say('add a panel') },
              ...free.map(panel => ({ value: panel, label: say(panel) })),
            ]}
            value=""
            onChange={event => {
              const panel = free.find(each => each === event.currentTarget.value)
              if (panel) change({ panels: [...set.panels, { panel, gu: [] }] })
            }}
          />
        )}
        <Button
          variant="default"
          onClick={onRemove}
          aria-label={say('Take out gloss set {number}', { number })}
        >
          {say('Take out')}
        </Button>
      </Group>
    </fieldset>
  )
}

/** `80 81 80.5`, between spaces or semicolons; undefined where something is no reading. */
function readGloss(text: string): number[] | undefined {
  const parts = text.split(/[\s;]+/).filter(Boolean)
  const values = parts.map(part => Number(part.replace(/,$/, '').replace(',', '.')))
  return values.length <= 20 && values.every(gu => gu >= 0 && gu <= 2_000) ? values : undefined
}
