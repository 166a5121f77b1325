import { Group, Select } from '@mantine/core'
import { DatePickerInput } from '@mantine/dates'
import { useState } from 'react'
import type { HistoryFilter } from '../../../main/api/views.ts'
import { dateOrderNow, say, sayKept } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { HistoryLines, useHistoryChoices } from '../../parts/HistoryLines.tsx'
import { entityWords } from '../../parts/historyWords.ts'
import pieces from '../../parts/pieces.module.css'
import { Heading } from './Heading.tsx'

/** Everything anybody ever did, narrowed by kind, person, act and days. */
export function HistorySection() {
  const choices = useHistoryChoices()
  const [kind, setKind] = useState<string | null>(null)
  const [who, setWho] = useState<string | null>(null)
  const [act, setAct] = useState<string | null>(null)
  const [fromDate, setFrom] = useState<string | null>(null)
  const [toDate, setTo] = useState<string | null>(null)
  const filter: HistoryFilter = {
    ...(kind && { entities: [kind] }),
    ...(who && { who }),
    ...(act && { act }),
    ...(fromDate && { fromDate }),
    ...(toDate && { toDate }),
  }
  const asked = new URLSearchParams({ ...filter, entities: kind ?? '' } as Record<string, string>)
  if (!kind) asked.delete('entities')
  const any = { clearable: true, searchable: true, placeholder: say('any'), w: 190 } as const
  const day = {
    clearable: true,
    placeholder: say('any'),
    valueFormat: dateOrderNow() === 'monthFirst' ? say('MMM D, YYYY') : say('D MMM YYYY'),
    w: 160,
  } as const
  return (
    <>
      <Heading title={say('History')}>
        {say(
          'Who did what when. Every change writes a line here, and nothing changes one afterwards; only when a person is erased are the words about them taken out.',
        )}
      </Heading>
      <section className={pieces.card} aria-label={say('Narrow the history')}>
        <Group align="end" gap="sm">
          <Select
            label={say('Of')}
            data={(choices?.entities ?? []).map(value => ({ value, label: entityWords(value) }))}
            value={kind}
            onChange={setKind}
            {...any}
          />
          <Select label={say('By||whom')} data={choices?.who ?? []} value={who} onChange={setWho} {...any} />
          <Select
            label={say('What')}
            data={(choices?.acts ?? []).map(value => ({ value, label: sayKept(value) }))}
            value={act}
            onChange={setAct}
            {...any}
          />
          <DatePickerInput label={say('From')} value={fromDate} onChange={setFrom} {...day} />
          <DatePickerInput label={say('To')} value={toDate} onChange={setTo} {...day} />
          <DocumentButton path={`/documents/history.csv?${asked}`}>{say('As a list (CSV)')}</DocumentButton>
        </Group>
      </section>
      <Card aria-label={say('What was done')}>
        <HistoryLines key={asked.toString()} filter={filter} told />
      </Card>
    </>
  )
}
