import { Button, Checkbox, Group, Switch, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { ExceptionView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { useEditing } from '../../data/editing.ts'
import { useForm } from '../../data/form.ts'
import { useNowAt } from '../../data/now.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { faultsOf } from '../../parts/faults.ts'
import { Form } from '../../parts/form/Form.tsx'
import { DateField } from '../../parts/inputs.tsx'
import { fullDateWords } from '../../parts/time.ts'
import { WallSpans } from '../../parts/WallSpans.tsx'
import { spansWords } from '../../parts/weekHours.ts'
import styles from './Settings.module.css'

/** The dates whose hours differ: holidays, a late evening, a Saturday opened. */
export function Exceptions() {
  const { zone } = useShop()
  const nowAt = useNowAt()
  const list = useQuery(trpc.hours.exceptions.queryOptions()).data ?? []
  const removing = useSaving(trpc.hours.removeException.mutationOptions())
  const { editing, edit, close } = useEditing()
  const [past, setPast] = useState(false)
  const today = nowAt === null ? '' : dateOf(nowAt, zone)
  const shown = list.filter(each => past || each.date >= today)
  const words = faultsOf(removing.error).rest()
  return (
    <section className={styles.card} aria-labelledby="exceptions">
      <h3 id="exceptions">Dates that differ</h3>
      {shown.length === 0 && (
        <p className={styles.soft}>
          Every date follows its weekday. Put in public holidays and other days the shop is closed or open
          longer.
        </p>
      )}
      <ul className={styles.list}>
        {shown.map(each => (
          <li key={each.id}>
            <span className={styles.grow}>
              <b>{fullDateWords(each.date)}</b> {spansWords(each.hours)}
              {each.note && <small>{each.note}</small>}
            </span>
            <Button
              variant="default"
              size="compact-sm"
              aria-label={`Change ${each.date}`}
              onClick={edit(each.id)}
            >
              Change
            </Button>
            <Button
              variant="subtle"
              size="compact-sm"
              aria-label={`Remove ${each.date}`}
              onClick={() => removing.save({ id: each.id, version: each.version })}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      {words && <p role="alert">{words}</p>}
      {editing ? (
        <ExceptionForm
          key={editing}
          date={list.find(each => each.id === editing)}
          today={today}
          onDone={close}
        />
      ) : (
        <Group mt="md">
          <Button variant="default" disabled={today === ''} onClick={edit('new')}>
            Add a date
          </Button>
          {list.length > shown.length || past ? (
            <Switch label="Past dates too" checked={past} onChange={() => setPast(!past)} />
          ) : null}
        </Group>
      )}
    </section>
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
    <Form form={form} label="A date with hours of its own" onCancel={onDone}>
      <Group align="flex-start" mt="md">
        <DateField label="Date" autoFocus {...form.field('date')} />
        <TextInput label="What for" placeholder="Public holiday" w={260} {...form.field('note')} />
      </Group>
      <Group align="flex-start">
        <Checkbox
          label="Closed all day"
          pt={8}
          checked={hours.length === 0}
          onChange={event => change({ hours: event.currentTarget.checked ? [] : [{ from: 480, to: 1080 }] })}
        />
        <WallSpans
          name="That day"
          spans={hours}
          onChange={(i, span) =>
            change({
              hours: hours.map((each, k) => (k === i ? { from: span.from, to: span.to } : each)),
            })
          }
          onAdd={span => change({ hours: [...hours, span] })}
          onRemove={i => change({ hours: hours.filter((_, k) => k !== i) })}
          errorAt={(i, end) => faults.at(`hours.${i}.${end}`)}
        />
      </Group>
    </Form>
  )
}
