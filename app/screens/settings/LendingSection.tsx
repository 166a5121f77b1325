import { Select, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { LendableView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { LentKind } from '../../../main/domain/shop/index.ts'
import { trpc } from '../../data/trpc.ts'
import type { SectionProps } from '../../parts/Sections.tsx'
import { labelOf, lentChoices } from '../../parts/shopWords.ts'
import { RowEditor, useRowForm } from './RowEditor.tsx'
import { RowSection } from './RowSection.tsx'

/** What the shop lends with a booking. */
export function LendingSection({ id }: SectionProps) {
  const archived = useState(false)
  return (
    <RowSection
      id={id}
      section="lending"
      title={say('To lend')}
      what={say('thing to lend')}
      rows={useQuery(trpc.lendables.list.queryOptions({ archived: archived[0] })).data}
      about={row => labelOf(lentChoices, row.kind)}
      order={trpc.lendables.order.mutationOptions()}
      archived={archived}
      empty={say('The shop lends nothing yet.')}
      editor={row => <LendableEditor row={row} />}
    >
      {say(
        'Loan cars, key boxes and places under cover. A booking may ask for one of each kind; it has it from the drop-off until the car leaves, and nobody else does meanwhile.',
      )}
    </RowSection>
  )
}

function LendableEditor({ row }: { row: LendableView | undefined }) {
  const saved = { name: row?.name ?? '', kind: row?.kind ?? ('loan car' as LentKind) }
  const form = useRowForm('lending', row, saved, trpc.lendables.save.mutationOptions())
  return (
    <RowEditor form={form} row={row} what={say('thing to lend')} api={trpc.lendables}>
      <TextInput label={say('Name')} maw={340} autoFocus={!row} {...form.field('name')} />
      <Select label={say('What it is')} maw={340} data={lentChoices} {...form.choice('kind')} />
    </RowEditor>
  )
}
