import { Button, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView, PlanKind, PlanView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { DateField, DecimalInput } from '../../parts/inputs.tsx'
import styles from '../upkeep/Upkeep.module.css'
import { kindChoices } from '../upkeep/words.ts'
import { planRule, type Repeats, repeatChoices } from './planRule.ts'

interface Props {
  car: CarView
  plan: PlanView | undefined
  onDone(): void
}

/** A plan's name and window; for a new one also how often it comes and from when it counts. */
export function PlanForm({ car, plan, onDone }: Props) {
  const [title, setTitle] = useState(plan?.title ?? '')
  const [kind, setKind] = useState<PlanKind>(plan?.kind ?? 'other')
  const [earlyDays, setEarlyDays] = useState(plan?.earlyDays ?? 7)
  const [lateDays, setLateDays] = useState(plan?.lateDays ?? 14)
  const [repeats, setRepeats] = useState<Repeats>('months')
  const [every, setEvery] = useState(6)
  const [own, setOwn] = useState('FREQ=YEARLY;BYMONTH=4;BYDAY=1MO')
  const [anchorTo, setAnchorTo] = useState<'date' | 'last-done'>('last-done')
  const [on, setOn] = useState(car.today)
  const saving = useSaving(trpc.upkeep.savePlan.mutationOptions())
  const faults = faultsOf(saving.error)
  const save = () =>
    saving.save(
      {
        ...(plan && { id: plan.id, version: plan.version }),
        vehicleId: car.vehicleId,
        kind,
        title,
        earlyDays,
        lateDays,
        rule: plan?.rule ?? planRule(repeats, every, own),
        anchor:
          anchorTo === 'date'
            ? { to: 'date', on }
            : { to: 'last-done', since: on, event: 'the day it was set up' },
      },
      onDone,
    )
  const label = plan ? `Change the plan ${plan.title}` : 'Add a plan'
  return (
    <Form error={saving.error} label={label} onSave={save}>
      <h3>{label}</h3>
      <div className={styles.fields}>
        <TextInput
          label="What it is for"
          placeholder="winter wash"
          value={title}
          onChange={event => setTitle(event.currentTarget.value)}
          error={faults.at('title')}
        />
        {!plan && (
          <>
            <Select
              label="Kind"
              data={kindChoices}
              allowDeselect={false}
              value={kind}
              onChange={value => value && setKind(value)}
              error={faults.at('kind')}
            />
            <Select
              label="Comes"
              data={repeatChoices}
              allowDeselect={false}
              value={repeats}
              onChange={value => value && setRepeats(value)}
              error={repeats === 'own' ? undefined : faults.at('rule')}
            />
            {repeats === 'own' ? (
              <TextInput
                label="Rule"
                description="RFC 5545, as FREQ=YEARLY;BYMONTH=4;BYDAY=1MO"
                value={own}
                onChange={event => setOwn(event.currentTarget.value)}
                error={faults.at('rule')}
              />
            ) : (
              repeats !== 'once' && (
                <DecimalInput label={`How many ${repeats}`} value={every} onChange={setEvery} />
              )
            )}
            <Select
              label="Counted from"
              data={[
                { value: 'last-done', label: 'the last visit done' },
                { value: 'date', label: 'a fixed date' },
              ]}
              allowDeselect={false}
              value={anchorTo}
              onChange={value => value && setAnchorTo(value)}
            />
            <DateField
              label={anchorTo === 'date' ? 'First on' : 'Until one is done, from'}
              value={on}
              onChange={setOn}
              error={faults.under('anchor')}
            />
          </>
        )}
        <DecimalInput
          label="May be early by"
          unit="d"
          value={earlyDays}
          onChange={setEarlyDays}
          error={faults.at('earlyDays')}
        />
        <DecimalInput
          label="May be late by"
          unit="d"
          value={lateDays}
          onChange={setLateDays}
          error={faults.at('lateDays')}
        />
      </div>
      <FormFoot faults={faults} busy={saving.busy} label={plan ? 'Save the plan' : 'Add this plan'}>
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}
