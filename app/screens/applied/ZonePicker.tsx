import { Button, Checkbox, Group, NativeSelect, Text, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Zone } from '../../../main/api/views.ts'
import { say, sayKept, word } from '../../../main/domain/language/index.ts'
import styles from './Applied.module.css'

const finishes = (
  ['gloss', 'satin', 'matte', 'film', 'glass', word('wheels')] satisfies Zone['finish'][]
).map(value => ({ value, label: sayKept(value) }))

interface Props {
  about: string
  value: Zone[]
  onChange(zones: Zone[]): void
  error?: string | undefined
}

/** The panels and zones a layer went on, each with its surface. One taken out stays in sight until the page is left. */
export function ZonePicker({ about, value: zones, onChange, error }: Props) {
  const [known, setKnown] = useState(zones)
  const [name, setName] = useState('')
  const on = (zone: Zone) => zones.find(each => each.name === zone.name)
  const keep = (next: Zone) => {
    setKnown(before => before.map(zone => (zone.name === next.name ? next : zone)))
    onChange(zones.map(zone => (zone.name === next.name ? next : zone)))
  }
  const toggle = (zone: Zone) =>
    onChange(on(zone) ? zones.filter(each => each.name !== zone.name) : [...zones, zone])
  const add = () => {
    const zone: Zone = { name: name.trim(), finish: 'gloss' }
    if (zone.name === '' || known.some(each => each.name === zone.name)) return
    setKnown(before => [...before, zone])
    onChange([...zones, zone])
    setName('')
  }
  return (
    <>
      <fieldset className={styles.zones} aria-label={say('Panels and zones of {about}', { about })}>
        <legend>{say('Panels and zones')}</legend>
        {known.map(zone => (
          <div key={zone.name} className={styles.zone}>
            <Checkbox
              label={sayKept(zone.name)}
              checked={on(zone) !== undefined}
              onChange={() => toggle(zone)}
            />
            <NativeSelect
              size="xs"
              aria-label={say('Surface of {name}', { name: sayKept(zone.name) })}
              data={finishes}
              value={on(zone)?.finish ?? zone.finish}
              disabled={!on(zone)}
              onChange={event => keep({ ...zone, finish: event.currentTarget.value as Zone['finish'] })}
            />
          </div>
        ))}
      </fieldset>
      <Group gap="xs" align="flex-end" mt={8}>
        <TextInput
          size="xs"
          label={say('Another panel or zone')}
          aria-label={say('Another panel or zone of {about}', { about })}
          value={name}
          onChange={event => setName(event.currentTarget.value)}
        />
        <Button size="xs" variant="default" onClick={add} disabled={name.trim() === ''}>
          {say('Add it')}
        </Button>
      </Group>
      {error && (
        <Text c="var(--late)" size="sm" role="alert">
          {error}
        </Text>
      )}
    </>
  )
}
