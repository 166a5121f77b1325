import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { BayView } from '../../../main/api/views.ts'
import type { Capability } from '../../../main/domain/shop/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import { Form } from '../../parts/form/Form.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { capabilityChoices, labelOf } from '../../parts/shopWords.ts'
import { Heading } from './Heading.tsx'
import { RowList } from './RowList.tsx'
import styles from './Settings.module.css'
import { Stretches } from './Stretches.tsx'

/** The places cars can stand, in the order of the board. */
export function BaysSection({ id }: SectionProps) {
  const [archived, setArchived] = useState(false)
  const bays = useQuery(trpc.bays.list.queryOptions({ archived })).data
  const ordering = useSaving(trpc.bays.order.mutationOptions())
  const bay = bays?.find(each => each.id === id)
  return (
    <>
      <Heading title="Bays">
        A place a car can stand. The board draws them in this order; a step goes only where the bay has what
        it needs.
      </Heading>
      <RowList
        section="bays"
        what="bay"
        rows={(bays ?? []).map(each => ({
          ...each,
          about: each.capabilities.map(can => labelOf(capabilityChoices, can).toLowerCase()).join(', '),
        }))}
        chosenId={bay || id === 'new' ? id : undefined}
        onOrder={ids => ordering.save({ ids })}
        archivedShown={archived}
        onShowArchived={setArchived}
        empty="There is no bay yet."
      >
        <BayEditor key={id} bay={bay} />
      </RowList>
    </>
  )
}

const fresh = { name: '', capabilities: [] as Capability[] }

function BayEditor({ bay }: { bay: BayView | undefined }) {
  const navigate = useNavigate()
  const form = useForm({
    saved: bay ? { name: bay.name, capabilities: bay.capabilities } : fresh,
    version: bay?.version,
    saving: trpc.bays.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(bay && { id: bay.id, version }) }),
    done: ({ id }) => {
      if (!bay) void navigate({ to: '/settings/$section/$id', params: { section: 'bays', id } })
    },
  })
  return (
    <>
      <div className={styles.card}>
        <Form form={form} label={bay ? bay.name : 'A new bay'}>
          <TextInput label="Name" maw={340} autoFocus={!bay} {...form.field('name')} />
          <ChoiceChips label="Good for" choices={capabilityChoices} {...form.field('capabilities')} />
          <p className={styles.soft}>
            {capabilityChoices.map(({ label, about }) => `${label}: ${about}`).join('. ')}.
          </p>
        </Form>
      </div>
      {bay && bay.archivedAt === null && (
        <Stretches
          title="Closed for a time"
          empty="Nothing ahead: the bay is free around the clock."
          addLabel="Close it for a time"
          reasonExample="Floor being painted"
          stretches={bay.closures}
          owner={{ bayId: bay.id }}
          save={trpc.bays.saveClosure.mutationOptions()}
          remove={trpc.bays.removeClosure.mutationOptions()}
        />
      )}
      {bay && (
        <ArchiveButton
          row={bay}
          archive={trpc.bays.archive.mutationOptions()}
          restore={trpc.bays.restore.mutationOptions()}
          label="Archive this bay"
        />
      )}
    </>
  )
}
