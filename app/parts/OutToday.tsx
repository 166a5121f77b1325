import { Button, Group, Select, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { atWall, dateOf } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'
import { useForm } from '../data/form.ts'
import { useNowAt } from '../data/now.ts'
import { useShop } from '../data/shop.ts'
import { client, trpc } from '../data/trpc.ts'
import { Dialog } from './form/Dialog.tsx'
import { Form } from './form/Form.tsx'
import { MomentInput } from './MomentInput.tsx'

/** Somebody is sick or a bay is down, from now on: recorded at once, and what it touches is told before and after. */
export function OutToday() {
  const [open, setOpen] = useState(false)
  const nowAt = useNowAt()
  return (
    <>
      <Button variant="default" disabled={nowAt === null} onClick={() => setOpen(true)}>
        {say('Sick or down…')}
      </Button>
      {open && nowAt !== null && (
        <Dialog title={say('Somebody is sick, or a bay is down')} size="lg" onClose={() => setOpen(false)}>
          <OutForm nowAt={nowAt} onDone={() => setOpen(false)} />
        </Dialog>
      )}
    </>
  )
}

type Recorded = Parameters<typeof client.mend.record.mutate>[0]

const saving = { mutationFn: (input: Recorded) => client.mend.record.mutate(input) }

function OutForm({ nowAt, onDone }: { nowAt: number; onDone(): void }) {
  const { zone } = useShop()
  const navigate = useNavigate()
  const crew = useQuery(trpc.crew.list.queryOptions()).data ?? []
  const bays = useQuery(trpc.bays.list.queryOptions()).data ?? []
  const [fromAt] = useState(nowAt)
  const form = useForm({
    saved: { who: '', toAt: atWall(dateOf(fromAt, zone), 1440, zone), reason: '' },
    saving,
    send: ({ who, toAt, reason }): Recorded | null => {
      const [kind, id = ''] = who.split(' ')
      if (id === '') return null
      const out = { fromAt, toAt, reason }
      return kind === 'crew' ? { kind: 'person', crewId: id, ...out } : { kind: 'bay', bayId: id, ...out }
    },
    done: ({ jobIds }) => {
      onDone()
      // What it touches is shown at once, each car with its ways out.
      if (jobIds.length > 0) navigate({ to: '/plan/$section', params: { section: 'mend' } })
    },
  })
  const named = (kind: string, rows: readonly { id: string; name: string }[]) =>
    rows.map(({ id, name }) => ({ value: `${kind} ${id}`, label: name }))
  return (
    <Form
      form={form}
      label={say('Sick or down')}
      save={say('Record it')}
      ready={form.value.who !== ''}
      onCancel={onDone}
    >
      <Group align="flex-start" gap="0.75rem">
        <Select
          label={say('Who or which bay')}
          data-autofocus
          data={[
            { group: say('Sick or away'), items: named('crew', crew) },
            { group: say('Down'), items: named('bay', bays) },
          ]}
          value={form.value.who || null}
          onChange={who => form.change({ who: who ?? '' })}
          error={form.field('who').error}
        />
        <MomentInput label={say('Until')} {...form.field('toAt')} />
        <TextInput label={say('What for')} placeholder={say('Sick')} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
