import { Checkbox, Stack, Text, TextInput } from '@mantine/core'
import { DatePickerInput } from '@mantine/dates'
import { useQuery } from '@tanstack/react-query'
import { coatedTwice } from '../../../main/domain/treatment/index.ts'
import { trpc } from '../../data/trpc.ts'
import { money } from '../../parts/money.ts'
import { Segments } from '../../parts/Segments.tsx'
import styles from './Book.module.css'
import { conditions, type Draft } from './booking.ts'

interface Props {
  draft: Draft
  currency: string
  today: string
  change(part: Partial<Draft>): void
}

/** What is sold, for which paint, and which day the owner asked for. */
export function WhatPicker({ draft, currency, today, change }: Props) {
  const treatments = useQuery(trpc.treatments.list.queryOptions()).data ?? []
  const products = useQuery(trpc.products.list.queryOptions()).data ?? []
  const byId = new Map(products.map(product => [product.id, product]))
  const chosen = treatments.filter(treatment => draft.treatmentIds.includes(treatment.id))
  const flip = (id: string, on: boolean) =>
    change({
      treatmentIds: on ? [...draft.treatmentIds, id] : draft.treatmentIds.filter(other => other !== id),
    })
  return (
    <Stack gap="xs">
      <fieldset className={styles.treatments}>
        <legend>Treatments</legend>
        {treatments.map(treatment => {
          const ticked = draft.treatmentIds.includes(treatment.id)
          const twice = ticked ? null : coatedTwice([...chosen, treatment], byId)
          return (
            <Checkbox
              key={treatment.id}
              checked={ticked}
              disabled={twice !== null}
              onChange={event => flip(treatment.id, event.currentTarget.checked)}
              label={
                <>
                  {treatment.name}&emsp;<b>{money(treatment.prices[draft.sizeClass], currency)}</b>
                </>
              }
              description={twice?.words ?? treatment.summary}
            />
          )
        })}
      </fieldset>
      {treatments.length === 0 && (
        <Text c="dimmed">No treatments yet: add what the shop sells under Settings, Treatments.</Text>
      )}
      <Segments
        label="Paint"
        aria-label="Condition of the paint"
        data={conditions}
        value={draft.condition}
        onChange={condition => change({ condition })}
      />
      <TextInput
        label="Covered transport and storage confirmed by"
        description="Empty: the car stays until it may get wet."
        maxLength={80}
        value={draft.coveredBy}
        onChange={event => change({ coveredBy: event.currentTarget.value })}
      />
      <DatePickerInput
        label="Day asked for"
        placeholder="Any day"
        clearable
        minDate={today}
        value={draft.askedDate}
        valueFormat="ddd D MMMM YYYY"
        onChange={value => change({ askedDate: value })}
      />
    </Stack>
  )
}
