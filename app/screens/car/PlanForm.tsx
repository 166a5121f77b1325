import { Select, TextInput } from '@mantine/core'
import type { CarView, PlanKind, PlanView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { DecimalInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { kindChoices } from '../upkeep/words.ts'
import { howMany, planRule, type Repeats, repeatChoices } from './planRule.ts'

interface Props {
  car: CarView
  plan: PlanView | undefined
  onDone(): void
}

/** A plan's name and window; for a new one also how often it comes and from when it counts. */
export function PlanForm({ car, plan, onDone }: Props) {
  const form = useForm({
    saved: {
      title: plan?.title ?? '',
      kind: plan?.kind ?? ('other' as PlanKind),
      earlyDays: plan?.earlyDays ?? 7,
      lateDays: plan?.lateDays ?? 14,
      repeats: 'months' as Repeats,
      every: 6,
      own: 'FREQ=YEARLY;BYMONTH=4;BYDAY=1MO',
      anchorTo: 'last-done' as 'date' | 'last-done',
      on: car.today,
    },
    version: plan?.version,
    saving: trpc.upkeep.savePlan.mutationOptions(),
    send: ({ title, kind, earlyDays, lateDays, repeats, every, own, anchorTo, on }, version) => ({
      ...(plan && { id: plan.id, version }),
      vehicleId: car.vehicleId,
      kind,
      title,
      earlyDays,
      lateDays,
      rule: plan?.rule ?? planRule(repeats, every, own),
      anchor:
        anchorTo === 'date'
          ? { to: 'date' as const, on }
          : { to: 'last-done' as const, since: on, event: say('the day it was set up') },
    }),
    done: onDone,
  })
  const { faults } = form
  const { repeats, anchorTo } = form.value
  const label = plan ? say('Change the plan {title}', { title: plan.title }) : say('Add a plan')
  return (
    <Form
      form={form}
      label={label}
      save={plan ? say('Save the plan') : say('Add this plan')}
      onCancel={onDone}
    >
      <h3>{label}</h3>
      <div className={pieces.fields}>
        <TextInput
          label={say('Name of the plan')}
          placeholder={say('winter wash')}
          {...form.field('title')}
        />
        {!plan && (
          <>
            <Select label={say('Kind')} data={kindChoices} {...form.choice('kind')} />
            <Select
              label={say('Comes||how often')}
              data={repeatChoices}
              {...form.choice('repeats')}
              error={repeats === 'own' ? undefined : faults.at('rule')}
            />
            {repeats === 'own' ? (
              <TextInput
                label={say('Rule')}
                description={say('RFC 5545, as FREQ=YEARLY;BYMONTH=4;BYDAY=1MO')}
                {...form.field('own')}
                error={faults.at('rule')}
              />
            ) : (
              repeats !== 'once' && (
                <DecimalInput
                  label={howMany[repeats]}
                  least={1}
                  most={1_000}
                  whole
                  {...form.field('every')}
                />
              )
            )}
            <Select
              label={say('Counted from')}
              data={[
                { value: 'last-done', label: say('the last visit done') },
                { value: 'date', label: say('a fixed date') },
              ]}
              {...form.choice('anchorTo')}
            />
            <DateField
              label={anchorTo === 'date' ? say('First on') : say('Until one is done, from')}
              {...form.field('on')}
              error={faults.under('anchor')}
            />
          </>
        )}
        <DecimalInput
          label={say('Can be early by')}
          description={say('Common practice until you set it')}
          unit={say('d||days')}
          most={366}
          whole
          {...form.field('earlyDays')}
        />
        <DecimalInput
          label={say('May be late by')}
          description={say('Common practice until you set it')}
          unit={say('d||days')}
          most={366}
          whole
          {...form.field('lateDays')}
        />
      </div>
    </Form>
  )
}
