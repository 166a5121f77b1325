import { Autocomplete, Group, Textarea, TextInput } from '@mantine/core'
import type { AppliedDraft, AppliedView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { fieldsOf } from '../../data/fields.ts'
import { Card } from '../../parts/Card.tsx'
import type { Faults } from '../../parts/faults.ts'
import pieces from '../../parts/pieces.module.css'
import { LayerFactList } from './FactList.tsx'
import { ZonePicker } from './ZonePicker.tsx'

interface Props {
  facts: AppliedView['facts']
  zone: string
  lots: AppliedView['lots']
  draft: AppliedDraft
  change(part: Partial<AppliedDraft>): void
  faults: Faults
}

/** What only a person can say of each layer: the lot, who, and where; beside what the shop knows itself. */
export function DraftFields({ facts, zone, lots, draft, change, faults }: Props) {
  const set = (position: number, part: Partial<AppliedDraft['layers'][number]>) =>
    change({
      layers: draft.layers.map(layer => (layer.position === position ? { ...layer, ...part } : layer)),
    })
  return (
    <>
      {facts.layers.map((fact, i) => {
        const layer = draft.layers.find(each => each.position === fact.position)
        if (!layer) return null
        const own = fieldsOf(
          layer,
          part => set(fact.position, part),
          name => faults.at(`draft.layers.${i}.${name}`),
        )
        const words = `${fact.name}, ${fact.productName}`
        return (
          <Card key={fact.position} title={`${i + 1}. ${words}`}>
            <LayerFactList layer={fact} zone={zone} />
            <Group align="flex-start" mt="sm">
              <Autocomplete
                label={say('Lot or batch')}
                aria-label={say('Lot or batch of {words}', { words })}
                w={280}
                data={lots.find(each => each.position === fact.position)?.lots ?? []}
                {...own.field('lot')}
              />
              <TextInput
                label={say('Laid by')}
                aria-label={say('Who laid {words}', { words })}
                w={220}
                {...own.field('who')}
              />
            </Group>
            <ZonePicker about={words} {...own.field('zones')} />
          </Card>
        )
      })}
      <section className={pieces.card}>
        <Textarea
          label={say('Note')}
          value={draft.note}
          onChange={event => change({ note: event.currentTarget.value })}
          autosize
          minRows={2}
        />
      </section>
    </>
  )
}
