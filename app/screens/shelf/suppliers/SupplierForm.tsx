import { Textarea, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import type { SupplierView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Card } from '../../../parts/Card.tsx'
import { ChoiceChips } from '../../../parts/ChoiceChips.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import {
  DecimalInput,
  MoneyInput,
  OptionalMoneyInput,
  OptionalWallInput,
  PhoneInput,
} from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { weekdayChoices } from '../../../parts/weekHours.ts'

function fieldsOf(supplier: SupplierView | undefined) {
  return {
    name: supplier?.name ?? '',
    email: supplier?.email ?? '',
    phone: supplier?.phone ?? '',
    account: supplier?.account ?? '',
    note: supplier?.note ?? '',
    weekdays: supplier?.weekdays ?? [1, 2, 3, 4, 5],
    closedOn: (supplier?.closedOn ?? []).join(' '),
    cutoffMin: supplier?.cutoffMin ?? null,
    leadMeanDays: supplier?.leadMeanDays ?? 3,
    leadSdDays: supplier?.leadSdDays ?? 1,
    minimumOrderMinor: supplier?.minimumOrderMinor ?? 0,
    carriageMinor: supplier?.carriageMinor ?? 0,
    freeCarriageFromMinor: supplier?.freeCarriageFromMinor ?? null,
  }
}

/** One supplier, with what its deliveries have shown beside what was entered. */
export function SupplierForm({ supplier }: { supplier: SupplierView | undefined }) {
  const navigate = useNavigate()
  const form = useForm({
    saved: fieldsOf(supplier),
    version: supplier?.version,
    saving: trpc.suppliers.save.mutationOptions(),
    send: (value, version) => ({
      ...value,
      ...(supplier && { id: supplier.id, version }),
      email: value.email.trim() || null,
      phone: value.phone.trim() || null,
      closedOn: value.closedOn.split(/[\s,;]+/).filter(Boolean),
    }),
    done: ({ id }) => {
      if (!supplier) void navigate({ to: '/shelf/$section/$id', params: { section: 'suppliers', id } })
    },
  })
  return (
    <div className={pieces.column}>
      <Card>
        <Form form={form} label={supplier ? supplier.name : say('A new supplier')}>
          <div className={pieces.fields}>
            <TextInput label={say('Name')} autoFocus={!supplier} {...form.field('name')} />
            <TextInput label={say('E-mail for orders')} type="email" {...form.field('email')} />
            <PhoneInput label={say('Phone')} {...form.field('phone')} />
            <TextInput label={say('Our customer number there')} {...form.field('account')} />
          </div>
          <ChoiceChips
            label={say('Works and delivers on')}
            choices={weekdayChoices()}
            value={form.value.weekdays.map(String)}
            onChange={days => form.change({ weekdays: days.map(Number) })}
            error={form.faults.under('weekdays')}
          />
          <div className={pieces.fields}>
            <TextInput
              label={say('Closed on')}
              placeholder="2026-12-24 2026-12-31"
              description={say('dates, as year-month-day')}
              {...form.field('closedOn')}
            />
            <OptionalWallInput
              placeholder={say('all day')}
              label={say('Orders the same day until')}
              {...form.field('cutoffMin')}
            />
            <DecimalInput
              label={say('Takes, on average')}
              unit={say('days')}
              most={365}
              {...form.field('leadMeanDays')}
            />
            <DecimalInput
              label={say('More or less')}
              unit={say('days')}
              most={365}
              {...form.field('leadSdDays')}
            />
            <MoneyInput label={say('Smallest order')} {...form.field('minimumOrderMinor')} />
            <MoneyInput label={say('Carriage')} {...form.field('carriageMinor')} />
            <OptionalMoneyInput
              placeholder={say('never')}
              label={say('Carriage free from')}
              {...form.field('freeCarriageFromMinor')}
            />
          </div>
          <p className={pieces.soft}>
            {supplier?.learnedLead
              ? supplier.learnedLead.words
              : say('After three deliveries their own record is used instead of these days.')}
          </p>
          <Textarea label={say('Note')} autosize minRows={2} {...form.field('note')} />
        </Form>
      </Card>
      {supplier && supplier.archivedAt !== null && (
        <p className={pieces.soft}>
          {say(
            'This supplier is archived. Taken back into use it sells nothing yet: take its offers back on each product’s page.',
          )}
        </p>
      )}
      {supplier && <ArchiveButton row={supplier} api={trpc.suppliers} label={say('Archive this supplier')} />}
    </div>
  )
}
