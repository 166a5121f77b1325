import { TextInput } from '@mantine/core'
import { DatePickerInput } from '@mantine/dates'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Chip, Chips } from '../../parts/Chip.tsx'
import { lentChoices } from '../../parts/shopWords.ts'
import { pickedDate } from '../../parts/time.ts'
import type { Call, Wish } from './call.ts'

interface Props {
  call: Call
  today: string
  change(part: Partial<Call>): void
}

const wishes: readonly { value: Wish; label: string }[] = [
  { value: 'any', label: say('Any day') },
  { value: 'day', label: say('A day') },
  { value: 'notBefore', label: say('Not before') },
  { value: 'homeBy', label: say('Home by') },
]

/** What the caller wishes of the days, and who answers for the cover the car leaves under. */
export function WishPicker({ call, today, change }: Props) {
  const [covered, setCovered] = useState(call.coveredBy !== '')
  const things = useQuery(trpc.lendables.list.queryOptions()).data ?? []
  const lent = lentChoices.filter(({ value }) => things.some(thing => thing.kind === value))
  const wish = wishes.find(each => each.value === call.wish)
  return (
    <>
      <Chips legend={say('Wish')}>
        {wishes.map(({ value, label }) => (
          <Chip
            key={value}
            type="radio"
            name="wish"
            label={label}
            checked={call.wish === value}
            onChange={() => change({ wish: value, wishedOn: value === 'any' ? null : call.wishedOn })}
          />
        ))}
        <Chip
          type="checkbox"
          label={say('Leaves under cover')}
          about={say(
            'Somebody answers for covered transport and storage; else the car stays until it may get wet.',
          )}
          checked={covered}
          onChange={event => {
            setCovered(event.currentTarget.checked)
            if (!event.currentTarget.checked) change({ coveredBy: '' })
          }}
        />
        {lent.map(({ value, label }) => (
          <Chip
            key={value}
            type="checkbox"
            label={label}
            about={say('From drop-off to handover; only days on which one is free are offered.')}
            checked={call.lends.includes(value)}
            onChange={event =>
              change({
                lends: event.currentTarget.checked
                  ? [...call.lends, value]
                  : call.lends.filter(each => each !== value),
              })
            }
          />
        ))}
      </Chips>
      {wish && wish.value !== 'any' && (
        <DatePickerInput
          aria-label={wish.label}
          placeholder={`${wish.label} …`}
          size="xs"
          minDate={today}
          value={call.wishedOn}
          valueFormat={pickedDate()}
          onChange={wishedOn => change({ wishedOn })}
        />
      )}
      {covered && (
        <TextInput
          label={say('Covered transport and storage confirmed by')}
          size="xs"
          maxLength={80}
          value={call.coveredBy}
          onChange={event => change({ coveredBy: event.currentTarget.value })}
        />
      )}
    </>
  )
}
