import { Button, Group } from '@mantine/core'
import type { GlossSetInput, Measured } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { glossWarnings } from '../../../../main/domain/measure/index.ts'
import { Card } from '../../../parts/Card.tsx'
import { GlossSetFields } from './GlossSetFields.tsx'

interface Props {
  /** How far a meter may be off its tile, gloss units. */
  allowedGu: number
  sets: Measured['gloss']
  change(sets: Measured['gloss']): void
  errorAt?: ((name: string) => string | undefined) | undefined
}

const empty: GlossSetInput = {
  instrument: '',
  tile: '',
  substrate: 'gloss',
  geometryDeg: 60,
  tileGu: null,
  startGu: null,
  endGu: null,
  panels: [],
}

/** Gloss, set by set: a set is calibrated before it, checked after it, and stays on one surface at one angle. */
export function GlossPart({ allowedGu, sets, change, errorAt }: Props) {
  const last = sets.at(-1)
  // The next set is mostly the same meter at another angle or on another surface; its tile is read anew.
  const next = last ? { ...empty, instrument: last.instrument, tile: last.tile } : empty
  return (
    <Card
      title={say('Gloss')}
      about={say('read the tile before each set and each change of surface, and again after it')}
    >
      {sets.map((set, i) => {
        const before = sets[i - 1] ?? null
        return (
          <GlossSetFields
            // biome-ignore lint/suspicious/noArrayIndexKey: sets have no other name than their place
            key={i}
            number={i + 1}
            set={set}
            warnings={
              set.panels.some(({ gu }) => gu.length > 0)
                ? glossWarnings(asSet(set), before && asSet(before), allowedGu)
                : []
            }
            change={part => change(sets.with(i, { ...set, ...part }))}
            onRemove={() => change(sets.filter((_, j) => j !== i))}
            errorAt={name => errorAt?.(`${i}.${name}`)}
          />
        )
      })}
      <Group mt="sm">
        <Button variant="default" disabled={sets.length >= 20} onClick={() => change([...sets, next])}>
          {sets.length === 0 ? say('Add a set of readings') : say('Add another set')}
        </Button>
      </Group>
    </Card>
  )
}

/** A tile nobody noted the figure of calibrates nothing. */
const asSet = (set: GlossSetInput) => ({
  ...set,
  tileGu: set.tileGu ?? 0,
  startGu: set.tileGu === null ? null : set.startGu,
})
