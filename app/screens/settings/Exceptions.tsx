import { Checkbox, Group, Switch, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { ExceptionView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useNowAt } from '../../data/now.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { fullDateWords } from '../../parts/time.ts'
import { WallSpans } from '../../parts/WallSpans.tsx'
import { spansWords } from '../../parts/weekHours.ts'
import { EditedRows } from './EditedRows.tsx'

/** The dates whose hours differ: holidays, a late evening, a Saturday opened. */
export function Exceptions() {
  const { zone } = useShop()
  const nowAt = useNowAt()
  const list = useQuery(trpc.hours.exceptions.queryOptions()).data ?? []
  const [past, setPast] = useState(false)
  const today = nowAt === null ? '' : dateOf(nowAt, zone)
  const shown = list.filter(each => past || each.date >= today)
  return (
    <EditedRows
      title={say('Dates that differ')}
      empty={say(
        'Every date follows its weekday. Put in public holidays and other days the shop is closed or open longer.',
      )}
      rows={shown}
      nameOf={each => fullDateWords(each.date)}
      wordsOf={each => (
        <>
          <b>{fullDateWords(each.date)}</b> {spansWords(each.hours)}
          {each.note && <small>{each.note}</small>}
        </>
      )}
      remove={trpc.hours.removeException.mutationOptions()}
      addLabel={say('Add a date')}
      ready={today !== ''}
      more={
        (list.length > shown.length || past) && (
          <Switch label={say('Past dates too')} checked={past} onChange={() => setPast(!past)} />
        )
      }
      form={(date, close) => <ExceptionForm date={date} today={today} onDone={close} />}
    />
  )
}

interface FormProps {
  /** Undefined: a new one. */
  date: ExceptionView | undefined
  today: string
  onDone(): void
}

function ExceptionForm({ date, today, onDone }: FormProps) {
  const form = useForm({
    saved: { date: date?.date ?? today, hours: date?.hours ?? [], note: date?.note ?? '' },
    version: date?.version,
    saving: trpc.hours.saveException.mutationOptions(),
    send: (value, version) => ({ ...value, ...(date && { id: date.id, version }) }),
    done: onDone,
  })
  const { change, faults } = form
  const { hours } = form.value
  return (
    <Form form={form} label={say('A date with hours of its own')} onCancel={onDone}>
      <Group align="flex-start" mt="md">
        <DateField label={say('Date')} autoFocus {...form.field('date')} />
        <TextInput
          label={say('What for')}
          placeholder={say('Public holiday')}
          w={260}
          {...form.field('note')}
        />
      </Group>
      <Group align="flex-start">
        <Checkbox
          label={say('Closed all day')}
          pt={8}
          checked={hours.length === 0}
          onChange={event => change({ hours: event.currentTarget.checked ? [] : [{ from: 480, to: 1080 }] })}
        />
        <WallSpans
          name={say('That day')}
          spans={hours}
          onChange={(i, { from, to }) => change({ hours: hours.with(i, { from, to }) })}
          onAdd={span => change({ hours: [...hours, span] })}
          onRemove={i => change({ hours: hours.toSpliced(i, 1) })}
          errorAt={(i, end) => faults.at(`hours.${i}.${end}`)}
        />
      </Group>
    </Form>
  )
}
