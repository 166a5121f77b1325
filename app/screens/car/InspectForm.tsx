import { Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import {
  type LookPanel,
  lookPanels,
  type PanelLook,
  type WaterLook,
} from '../../../main/domain/upkeep/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { choicesFrom } from '../../parts/shopWords.ts'
import table from '../../parts/table.module.css'
import { fullDateWords } from '../../parts/time.ts'

const waterChoices = choicesFrom<WaterLook>({
  strong: say('▲ Tight beads, runs off'),
  weak: say('△ Flat beads, hangs'),
  none: say('□ A film, no beads'),
})

type Seen = Partial<Record<LookPanel, { before: WaterLook | null; after: WaterLook | null }>>

/** What lies on the car, looked at before and after its wash: working, clogged or gone, panel by panel. */
export function InspectForm({ car, onDone }: { car: CarView; onDone(): void }) {
  const newest = car.layers.find(layer => layer.id === car.life?.layerId) ?? car.layers[0]
  const [unsaid, setUnsaid] = useState<string | null>(null)
  const form = useForm({
    saved: { layerId: newest?.id ?? '', on: car.today, seen: {} as Seen, note: '' },
    saving: trpc.upkeep.inspect.mutationOptions(),
    send: ({ seen, ...value }) => {
      const panels = panelsOf(seen)
      const fault = faultOf(seen, panels)
      setUnsaid(fault)
      return fault === null ? { ...value, panels } : null
    },
    done: onDone,
  })
  const put = (panel: LookPanel, part: Partial<PanelLook>) => {
    const { before = null, after = null } = form.value.seen[panel] ?? {}
    form.change({ seen: { ...form.value.seen, [panel]: { before, after, ...part } } })
    setUnsaid(null)
  }
  const error = unsaid ?? form.faults.at('panels') ?? form.faults.at('inspections')
  return (
    <Form form={form} label={say('Record an inspection')} save={say('Save the inspection')} onCancel={onDone}>
      <h3>{say('Record an inspection')}</h3>
      <div className={pieces.fields}>
        <Select
          label={say('What was looked at')}
          data={car.layers.map(layer => ({
            value: layer.id,
            label: say('{productName}, laid {laidOn}', {
              productName: layer.productName,
              laidOn: fullDateWords(layer.laidOn),
            }),
          }))}
          {...form.choice('layerId')}
        />
        <DateField label={say('Looked at on')} {...form.field('on')} />
      </div>
      <p className={pieces.soft}>
        {say(
          'Pour water, look, wash with a decontaminant, look again. Dirt hides a coating that still works; only the second look tells clogged from gone. Gloss says nothing of it.',
        )}
      </p>
      <table className={table.table}>
        <HeadRow columns={[say('Panel'), say('Before the wash'), say('After the wash')]} />
        <tbody>
          {lookPanels.map(panel => (
            <tr key={panel}>
              <td>{say(panel)}</td>
              {(['before', 'after'] as const).map(when => (
                <td key={when}>
                  <Select
                    aria-label={
                      when === 'before'
                        ? say('{panel}, before the wash', { panel: say(panel) })
                        : say('{panel}, after the wash', { panel: say(panel) })
                    }
                    placeholder={when === 'before' ? say('Not looked at') : say('Not washed yet')}
                    clearable
                    size="xs"
                    data={waterChoices}
                    value={form.value.seen[panel]?.[when] ?? null}
                    onChange={value => put(panel, { [when]: value as WaterLook | null })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {error && <p role="alert">{error}</p>}
      <TextInput label={say('Note')} {...form.field('note')} />
    </Form>
  )
}

function panelsOf(seen: Seen): PanelLook[] {
  return lookPanels.flatMap(panel => {
    const { before = null, after = null } = seen[panel] ?? {}
    return before === null ? [] : [{ panel, before, after }]
  })
}

function faultOf(seen: Seen, panels: readonly PanelLook[]): string | null {
  const unseen = lookPanels.find(panel => seen[panel]?.after && !seen[panel].before)
  if (unseen) return say('Say what the {unseen} looked like before the wash, too.', { unseen: say(unseen) })
  return panels.length === 0 ? say('Say what at least one panel looked like.') : null
}
