import { TagsInput, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { BayView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { bayFeatures, type Capability } from '../../../main/domain/shop/index.ts'
import { trpc } from '../../data/trpc.ts'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import pieces from '../../parts/pieces.module.css'
import type { SectionProps } from '../../parts/Sections.tsx'
import { capabilityChoices, labelsOf } from '../../parts/shopWords.ts'
import { featureOf, featureText } from './featureText.ts'
import { RowEditor, useRowForm } from './RowEditor.tsx'
import { RowSection } from './RowSection.tsx'
import { Stretches } from './Stretches.tsx'

/** The places cars can stand, in the order of the board. */
export function BaysSection({ id }: SectionProps) {
  const archived = useState(false)
  return (
    <RowSection
      id={id}
      section="bays"
      title={say('Bays')}
      what={say('bay')}
      rows={useQuery(trpc.bays.list.queryOptions({ archived: archived[0] })).data}
      about={bay =>
        [labelsOf(capabilityChoices, bay.capabilities), ...bay.offers.map(featureText)].join(', ')
      }
      order={trpc.bays.order.mutationOptions()}
      archived={archived}
      empty={say('There is no bay yet.')}
      editor={bay => <BayEditor bay={bay} />}
    >
      {say(
        'A place a car can stand. The board draws them in this order; a step goes only where the bay has what it needs.',
      )}
    </RowSection>
  )
}

function BayEditor({ bay }: { bay: BayView | undefined }) {
  const saved = {
    name: bay?.name ?? '',
    capabilities: bay?.capabilities ?? ([] as Capability[]),
    offers: bay?.offers ?? [],
  }
  const form = useRowForm('bays', bay, saved, trpc.bays.save.mutationOptions())
  const offers = form.field('offers')
  const closures = bay?.archivedAt === null && (
    <Stretches
      title={say('Closed for a time')}
      empty={say('Nothing ahead: the bay is free around the clock.')}
      addLabel={say('Close it for a time')}
      reasonExample={say('Floor being painted')}
      stretches={bay.closures}
      owner={{ bayId: bay.id }}
      save={trpc.bays.saveClosure.mutationOptions()}
      remove={trpc.bays.removeClosure.mutationOptions()}
    />
  )
  return (
    <RowEditor form={form} row={bay} what={say('bay')} api={trpc.bays} beside={closures}>
      <TextInput label={say('Name')} maw={340} autoFocus={!bay} {...form.field('name')} />
      <ChoiceChips label={say('Good for')} choices={capabilityChoices} {...form.field('capabilities')} />
      <p className={pieces.soft}>
        {capabilityChoices.map(({ label, about }) => `${label}: ${about}`).join('. ')}.
      </p>
      <TagsInput
        label={say('It also has')}
        description={say('What a step may ask for. Choose, or write a name of your own and press Enter.')}
        maw={520}
        data={bayFeatures.map(featureText)}
        {...offers}
        value={offers.value.map(featureText)}
        onChange={typed => offers.onChange(typed.map(featureOf))}
      />
    </RowEditor>
  )
}
