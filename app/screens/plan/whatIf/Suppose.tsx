import { Button, MultiSelect, SegmentedControl, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { SizeClass, WhatIfInput } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import { DurationInput } from '../../../parts/inputs.tsx'
import { MomentInput } from '../../../parts/MomentInput.tsx'
import pieces from '../../../parts/pieces.module.css'

const kinds = [
  { value: 'bayClosed', label: say('A bay is closed') },
  { value: 'away', label: say('Somebody is away') },
  { value: 'rush', label: say('A rush car comes') },
  { value: 'cureLonger', label: say('A cure takes longer') },
]

const sizes = [
  { value: 'small', label: say('Small') },
  { value: 'medium', label: say('Medium') },
  { value: 'large', label: say('Large') },
  { value: 'xl', label: say('XL') },
]

/** Cars that come within so many days may be laid anew for it. */
const days = 14

interface Props {
  nowAt: number
  busy: boolean
  error: unknown
  ask(asked: WhatIfInput): void
}

/** What is supposed to happen. Nothing typed here is worth keeping: it is a question, no form of a row. */
export function Suppose({ nowAt, busy, error, ask }: Props) {
  const [kind, setKind] = useState('bayClosed')
  const [of, setOf] = useState<string | null>(null)
  const [treatmentIds, setTreatments] = useState<string[]>([])
  const [sizeClass, setSize] = useState<SizeClass>('medium')
  const [fromAt, setFrom] = useState(nowAt)
  const [toAt, setTo] = useState(nowAt + 1440)
  const [moreMin, setMore] = useState(240)
  const choices = useChoices()
  const faults = faultsOf(error)
  const what = whatOf()
  function whatOf(): WhatIfInput['what'] | null {
    const time = { fromAt, toAt }
    if (kind === 'rush') return treatmentIds.length === 0 ? null : { kind, treatmentIds, sizeClass, ...time }
    if (of === null) return null
    if (kind === 'bayClosed') return { kind, bayId: of, ...time }
    if (kind === 'away') return { kind, crewId: of, ...time }
    return { kind: 'cureLonger', jobId: of, moreMin }
  }
  const chosen = choices[kind as keyof typeof choices]
  return (
    <form
      className={`${pieces.card} ${pieces.form}`}
      aria-label={say('Suppose')}
      onSubmit={event => {
        event.preventDefault()
        if (what) ask({ days, what })
      }}
    >
      <SegmentedControl
        aria-label={say('What happens')}
        data={kinds}
        value={kind}
        onChange={next => {
          setKind(next)
          setOf(null)
        }}
      />
      {kind === 'rush' ? (
        <>
          <MultiSelect
            label={say('Treatments')}
            data={choices.treatments}
            value={treatmentIds}
            onChange={setTreatments}
            maw={520}
          />
          <Select
            label={say('Size')}
            data={sizes}
            value={sizeClass}
            allowDeselect={false}
            onChange={next => next && setSize(next as SizeClass)}
            maw={260}
          />
        </>
      ) : (
        <Select
          label={{ bayClosed: say('Which bay'), away: say('Who'), cureLonger: say('Which car') }[kind] ?? ''}
          data={chosen}
          value={of}
          onChange={setOf}
          searchable
          maw={420}
        />
      )}
      {kind === 'cureLonger' ? (
        <DurationInput
          label={say('Longer by')}
          value={moreMin}
          onChange={setMore}
          error={faults.at('what.moreMin')}
          maw={260}
        />
      ) : (
        <>
          <MomentInput
            label={kind === 'rush' ? say('It may come from') : say('From')}
            value={fromAt}
            onChange={setFrom}
            error={faults.at('fromAt')}
          />
          <MomentInput
            label={kind === 'rush' ? say('Wanted home by') : say('To')}
            value={toAt}
            onChange={setTo}
            error={faults.at('toAt')}
          />
        </>
      )}
      <Refused words={faults.rest()} />
      <Button type="submit" loading={busy} disabled={what === null} style={{ alignSelf: 'start' }}>
        {say('Show what becomes of every promise')}
      </Button>
    </form>
  )
}

/** What there is to choose from for each kind. */
function useChoices() {
  const bays = useQuery(trpc.bays.list.queryOptions()).data ?? []
  const crew = useQuery(trpc.crew.list.queryOptions()).data ?? []
  const sold = useQuery(trpc.treatments.list.queryOptions()).data ?? []
  const curing = useQuery(trpc.dayPlan.whatIf.curing.queryOptions()).data ?? []
  const named = (rows: readonly { id: string; name: string }[]) =>
    rows.map(({ id, name }) => ({ value: id, label: name }))
  return {
    bayClosed: named(bays),
    away: named(crew),
    cureLonger: curing.map(({ jobId, plate }) => ({ value: jobId, label: plate })),
    rush: [],
    treatments: named(sold),
  }
}
