import { Alert, Button, Textarea, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import type { SupplierView } from '../../../../main/api/views.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { ChoiceChips } from '../../../parts/ChoiceChips.tsx'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput, MoneyInput, PhoneInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'
import { OptionalMoneyInput, OptionalWallInput } from './optionalInputs.tsx'

const dayChoices = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'].map((label, i) => ({
  value: String(i + 1),
  label,
}))

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
  const draft = useDraft(fieldsOf(supplier), supplier?.version ?? 0)
  const saving = useSaving(trpc.suppliers.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const { value, change } = draft
  const row = supplier ? { id: supplier.id, version: supplier.version } : {}
  const save = () =>
    saving.save(
      {
        ...row,
        ...value,
        email: value.email.trim() || null,
        phone: value.phone.trim() || null,
        closedOn: value.closedOn.split(/[\s,;]+/).filter(Boolean),
      },
      ({ id }) => {
        draft.settle()
        if (!supplier) void navigate({ to: '/shelf/$section/$id', params: { section: 'suppliers', id } })
      },
    )
  const text = (field: 'name' | 'email' | 'account') => ({
    value: value[field],
    onChange: (event: React.ChangeEvent<HTMLInputElement>) => change({ [field]: event.currentTarget.value }),
    error: faults.at(field),
  })
  return (
    <div className={styles.stack}>
      <div className={styles.card}>
        <Form error={saving.error} label={supplier ? supplier.name : 'A new supplier'} onSave={save}>
          <div className={styles.fields}>
            <TextInput label="Name" autoFocus={!supplier} {...text('name')} />
            <TextInput label="E-mail for orders" type="email" {...text('email')} />
            <PhoneInput
              label="Phone"
              value={value.phone}
              onChange={phone => change({ phone })}
              error={faults.at('phone')}
            />
            <TextInput label="Our customer number there" {...text('account')} />
          </div>
          <ChoiceChips
            label="Works and delivers on"
            choices={dayChoices}
            value={value.weekdays.map(String)}
            onChange={days => change({ weekdays: days.map(Number) })}
            error={faults.under('weekdays')}
          />
          <div className={styles.fields}>
            <TextInput
              label="Closed on"
              placeholder="2026-12-24 2026-12-31"
              description="dates, as year-month-day"
              inputWrapperOrder={['label', 'input', 'description', 'error']}
              value={value.closedOn}
              onChange={event => change({ closedOn: event.currentTarget.value })}
              error={faults.under('closedOn')}
            />
            <OptionalWallInput
              label="Orders the same day until"
              value={value.cutoffMin}
              onChange={cutoffMin => change({ cutoffMin })}
              error={faults.at('cutoffMin')}
            />
            <DecimalInput
              label="Takes, on average"
              unit="days"
              rightSectionWidth={52}
              value={value.leadMeanDays}
              onChange={leadMeanDays => change({ leadMeanDays })}
              error={faults.at('leadMeanDays')}
            />
            <DecimalInput
              label="More or less"
              unit="days"
              rightSectionWidth={52}
              value={value.leadSdDays}
              onChange={leadSdDays => change({ leadSdDays })}
              error={faults.at('leadSdDays')}
            />
            <MoneyInput
              label="Smallest order"
              value={value.minimumOrderMinor}
              onChange={minimumOrderMinor => change({ minimumOrderMinor })}
              error={faults.at('minimumOrderMinor')}
            />
            <MoneyInput
              label="Carriage"
              value={value.carriageMinor}
              onChange={carriageMinor => change({ carriageMinor })}
              error={faults.at('carriageMinor')}
            />
            <OptionalMoneyInput
              label="Carriage free from"
              value={value.freeCarriageFromMinor}
              onChange={freeCarriageFromMinor => change({ freeCarriageFromMinor })}
              error={faults.at('freeCarriageFromMinor')}
            />
          </div>
          <p className={styles.soft}>
            {supplier?.learnedLead
              ? supplier.learnedLead.words
              : 'After three deliveries their own record is used instead of these days.'}
          </p>
          <Textarea
            label="Note"
            autosize
            minRows={2}
            value={value.note}
            onChange={event => change({ note: event.currentTarget.value })}
            error={faults.at('note')}
          />
          <FormFoot
            faults={faults}
            busy={saving.busy}
            dirty={draft.dirty}
            outdated={draft.outdated}
            onReload={() => {
              saving.reset()
              draft.reload()
            }}
          />
        </Form>
      </div>
      {supplier && <Putting supplier={supplier} />}
    </div>
  )
}

/** An archived supplier's past orders stay; nothing is bought there any more. */
function Putting({ supplier }: { supplier: SupplierView }) {
  const archiving = useSaving(trpc.suppliers.archive.mutationOptions())
  const words = faultsOf(archiving.error).rest()
  if (supplier.archivedAt !== null) return <p className={styles.soft}>This supplier is archived.</p>
  return (
    <>
      {words && (
        <Alert color="red" variant="outline" role="alert">
          {words}
        </Alert>
      )}
      <div>
        <Button
          variant="subtle"
          color="red"
          loading={archiving.busy}
          onClick={() => archiving.save({ id: supplier.id, version: supplier.version })}
        >
          Archive this supplier
        </Button>
      </div>
    </>
  )
}
