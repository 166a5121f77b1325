import { Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { ReusablesView, SetView, ShelfProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { yearDateWords } from '../../../parts/shelf/amounts.ts'
import { Table } from '../../../parts/Table.tsx'
import { GradesForm } from './GradesForm.tsx'
import { SetForm } from './SetForm.tsx'

type Doing = { kind: 'demoted' | 'retired'; set: SetView } | null

/** Sets that are washed and used again: what each is good for, how often it was washed, and what it is due for. */
export function Reusables({ product }: { product: ShelfProductView }) {
  const { reusables } = product
  return (
    <div className={pieces.column}>
      {reusables && <Sets product={product} reusables={reusables} />}
      <GradesForm productId={product.id} reusables={reusables} />
    </div>
  )
}

function Sets({ product, reusables }: { product: ShelfProductView; reusables: NonNullable<ReusablesView> }) {
  const [doing, setDoing] = useState<Doing>(null)
  const washing = useSaving(trpc.shelf.changeSet.mutationOptions())
  const form = useForm({
    saved: { name: '', amount: 6 },
    saving: trpc.shelf.startSet.mutationOptions(),
    send: value => ({ ...value, productId: product.id }),
  })
  const { sets, inUse } = reusables
  return (
    <Card
      title={say('In use')}
      about={`${inUse} ${say('{inUse, plural, one {piece} other {pieces}}', { inUse })}`}
    >
      <Table
        rows={sets}
        keyOf={set => set.id}
        empty={say('No set is in use. Take some pieces from the shelf into use below.')}
        columns={[
          {
            head: say('Set'),
            cell: set => <b>{set.name}</b>,
            small: set =>
              say('{pieces} pieces since {startedOn}{retired}', {
                pieces: set.pieces,
                startedOn: yearDateWords(set.startedOn),
                retired: set.retired > 0 ? say(', {retired} retired', { retired: set.retired }) : '',
              }),
          },
          {
            head: say('Good for'),
            cell: set => set.gradeName,
            small: set => set.due && <span className={pieces.late}>{dueWords(set)}</span>,
          },
          {
            head: say('Washed'),
            number: true,
            cell: set =>
              say('{gradeWashes} of {gradeMost}', { gradeWashes: set.gradeWashes, gradeMost: set.gradeMost }),
            small: set => say('{washes} in all', { washes: set.washes }),
          },
          {
            head: say('What may be done'),
            cell: set => (
              <Group gap={4}>
                <RowButton
                  does={say('Washed')}
                  of={set.name}
                  onClick={() =>
                    washing.save({ id: set.id, version: set.version, act: { kind: 'washed' }, reason: '' })
                  }
                />
                {set.next && (
                  <RowButton
                    does={say('Demote')}
                    of={set.name}
                    onClick={() => setDoing({ kind: 'demoted', set })}
                  />
                )}
                <RowButton
                  does={say('Retire')}
                  of={set.name}
                  onClick={() => setDoing({ kind: 'retired', set })}
                />
              </Group>
            ),
          },
        ]}
      />
      <Refused of={washing.error} />
      {doing ? (
        <SetForm key={`${doing.kind}-${doing.set.id}`} {...doing} onClose={() => setDoing(null)} />
      ) : (
        <Form form={form} label={say('Take pieces into use')} save={say('Take them into use')}>
          <Group align="flex-start" mt="sm">
            <TextInput
              label={say('A new set')}
              placeholder={say('Blue pads')}
              w={200}
              {...form.field('name')}
            />
            <DecimalInput label={say('Pieces')} w={110} whole {...form.field('amount')} />
          </Group>
        </Form>
      )}
    </Card>
  )
}

function dueWords({ due }: SetView): string {
  return due?.act === 'demote'
    ? say('⚠ washed often enough: now for {to}', { to: due.to })
    : say('⚠ washed often enough: retire it')
}
