import { Button, Group, Select } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { say } from '../../../main/domain/language/index.ts'
import { type PanelNoted, panelNames } from '../../../main/domain/shop/index.ts'
import type { Fields } from '../../data/fields.ts'
import { OptionalDateField } from '../../parts/DateField.tsx'
import { IconAct } from '../../parts/IconAct.tsx'
import pieces from '../../parts/pieces.module.css'
import { panelFinishChoices } from '../../parts/shopWords.ts'

interface Props {
  panels: readonly PanelNoted[]
  fields: Fields<PanelNoted>[]
  onChange(panels: PanelNoted[]): void
}

/** The panels that are not as the rest of the car: a wrapped roof, a fresh respray, a plastic bumper. */
export function PanelFields({ panels, fields, onChange }: Props) {
  const free = panelNames.find(name => panels.every(({ panel }) => panel !== name))
  return (
    <div className={pieces.whole}>
      {fields.map((panel, i) => (
        <Group key={panel.value.panel} gap="sm" align="flex-end">
          <Select
            label={say('Panel')}
            data={panelNames.map(value => ({ value, label: say(value) }))}
            {...panel.choice('panel')}
          />
          <Select label={say('Is')} data={panelFinishChoices} {...panel.choice('finish')} />
          <OptionalDateField label={say('Since')} w={170} {...panel.field('since')} />
          <IconAct
            label={say('Take out {panel}', { panel: say(panel.value.panel) })}
            icon={IconX}
            onClick={() => onChange(panels.toSpliced(i, 1))}
          />
        </Group>
      ))}
      {free && (
        <Button
          variant="default"
          size="compact-sm"
          mt="xs"
          onClick={() => onChange([...panels, { panel: free, finish: 'film', since: null }])}
        >
          {say('A panel that differs')}
        </Button>
      )}
    </div>
  )
}
