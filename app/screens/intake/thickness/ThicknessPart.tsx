import { NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { IntakeView, Measured } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { type PanelName, panelNames } from '../../../../main/domain/shop/index.ts'
import { useShop } from '../../../data/shop.ts'
import { Card } from '../../../parts/Card.tsx'
import { Chip } from '../../../parts/Chip.tsx'
import pieces from '../../../parts/pieces.module.css'
import intake from '../Intake.module.css'
import { NumberPad } from './NumberPad.tsx'
import { PasteThickness } from './PasteThickness.tsx'
import styles from './Thickness.module.css'
import { ThicknessTable } from './ThicknessTable.tsx'

interface Props {
  record: IntakeView
  measured: Pick<Measured, 'gauge' | 'thickness'>
  change(part: Partial<Pick<Measured, 'gauge' | 'thickness'>>): void
  error?: string | undefined
}

/** Paint thickness: a panel chosen, its spots typed one after another, and at once what they say. */
export function ThicknessPart({ record, measured, change, error }: Props) {
  const { units } = useShop()
  const [unit, setUnit] = useState<'um' | 'mil'>(units === 'us' ? 'mil' : 'um')
  const [panel, setPanel] = useState<PanelName>('Bonnet')
  const [typed, setTyped] = useState('')
  const { thickness } = measured
  const spot = Math.max(0, ...thickness.filter(each => each.panel === panel).map(each => each.spot)) + 1
  const um = Math.round(Number(typed) * (unit === 'mil' ? 25.4 : 1) * 10) / 10
  const fits = um > 0 && um <= 5_000 && spot < 100
  const take = () => {
    if (!fits) return
    change({ thickness: [...thickness, { panel, spot, um }] })
    setTyped('')
  }
  return (
    <Card title={say('Paint thickness')} about={say('three spots a panel tell more than one')}>
      <fieldset className={intake.chips} aria-label={say('Panel measured')}>
        {panelNames.map(name => {
          const count = thickness.filter(each => each.panel === name).length
          return (
            <Chip
              key={name}
              type="radio"
              name="measured"
              label={count > 0 ? `${say(name)} · ${count}` : say(name)}
              checked={panel === name}
              onChange={() => setPanel(name)}
            />
          )
        })}
      </fieldset>
      <div className={styles.measure}>
        <div>
          <p className={styles.shown} aria-live="polite">
            <span className={pieces.soft}>{say('{panel}, spot {spot}', { panel: say(panel), spot })}</span>
            <b>{typed === '' ? '–' : typed}</b> {unit === 'um' ? say('µm') : say('mil')}
          </p>
          <NumberPad value={typed} onChange={setTyped} onEnter={take} enter={say('Keep, next spot')} />
          {typed !== '' && !fits && (
            <p role="alert" className={pieces.late}>
              {say('No paint is that thick: type what the gauge shows, and check its unit.')}
            </p>
          )}
        </div>
        <div className={pieces.column}>
          <div className={pieces.fields}>
            <NativeSelect
              label={say('The gauge shows')}
              data={[
                { value: 'um', label: say('µm') },
                { value: 'mil', label: say('mil') },
              ]}
              value={unit}
              onChange={event => setUnit(event.currentTarget.value as 'um' | 'mil')}
            />
            <TextInput
              label={say('Its serial number')}
              maxLength={80}
              value={measured.gauge}
              onChange={event => change({ gauge: event.currentTarget.value })}
            />
          </div>
          <PasteThickness
            unit={unit}
            readings={thickness}
            onRead={more => change({ thickness: [...thickness, ...more] })}
          />
        </div>
      </div>
      {error && (
        <p role="alert" className={pieces.late}>
          {error}
        </p>
      )}
      <ThicknessTable
        readings={thickness}
        rules={record.rules.thickness}
        paint={record.facts.paint}
        units={units}
        onRemove={index => change({ thickness: thickness.filter((_, i) => i !== index) })}
      />
    </Card>
  )
}
