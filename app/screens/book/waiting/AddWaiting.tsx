import { Button, Chip, Group, TextInput } from '@mantine/core'
import { DatePickerInput } from '@mantine/dates'
import { useState } from 'react'
import { localeNow, say, weekdaysNow } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import pieces from '../../../parts/pieces.module.css'
import { pickedDate } from '../../../parts/time.ts'
import type { Call } from '../call.ts'

/** Puts the caller's car on the list, with the days that suit them. */
export function AddWaiting({ call, today }: { call: Call; today: string }) {
  const [days, setDays] = useState<[string | null, string | null]>([today, null])
  const [weekdays, setWeekdays] = useState<string[]>([])
  const [note, setNote] = useState('')
  const add = useSaving(trpc.waiting.add.mutationOptions(), {
    onSaved: () => {
      setDays([today, null])
      setWeekdays([])
      setNote('')
    },
  })
  const { vehicleId, treatmentIds, condition, scope } = call
  const [fromOn, toOn] = days
  if (vehicleId === null || treatmentIds.length === 0)
    return (
      <p className={pieces.soft}>
        {say('To put somebody on the list, choose their car and what is to be done first.')}
      </p>
    )
  return (
    <fieldset className={pieces.bare} aria-label={say('Put on the waiting list')}>
      <Group align="flex-end">
        <DatePickerInput
          type="range"
          label={say('Days that suit, from and to')}
          minDate={today}
          value={days}
          valueFormat={pickedDate()}
          onChange={setDays}
          w="19rem"
        />
        <Chip.Group multiple value={weekdays} onChange={setWeekdays}>
          <Group gap={4} role="group" aria-label={say('Brought on these days of the week')}>
            {weekdaysNow().map(day => (
              <Chip key={day} value={String(day)} size="xs">
                {dayName(day)}
              </Chip>
            ))}
          </Group>
        </Chip.Group>
        <TextInput
          label={say('Note')}
          value={note}
          maxLength={400}
          onChange={event => setNote(event.currentTarget.value)}
        />
        <Button
          disabled={fromOn === null || toOn === null}
          loading={add.busy}
          onClick={() =>
            fromOn !== null &&
            toOn !== null &&
            add.save({
              vehicleId,
              treatmentIds,
              condition,
              scope,
              fromOn,
              toOn,
              weekdays: weekdays.map(Number),
              note,
            })
          }
        >
          {say('Put on the waiting list')}
        </Button>
      </Group>
      {add.error !== null && add.error !== undefined && <p role="alert">{faultOf(add.error).message}</p>}
    </fieldset>
  )
}

/** A day of the week, 1 for Monday, as the calendar of the language shortens it. */
function dayName(day: number): string {
  // The first Monday of 2026 was the fifth of January.
  return Temporal.PlainDate.from('2026-01-04')
    .add({ days: day })
    .toLocaleString(localeNow(), { weekday: 'short' })
}
