import { Select, Textarea, TextInput } from '@mantine/core'
import type { SafetyFields, SafetyView } from '../../../../main/api/views.ts'
import { storageGroups, storageGroupWords } from '../../../../main/domain/hazard/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { OptionalDateField } from '../../../parts/DateField.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { OptionalDecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'

const silent = 'silent'

/** The form's own texts: lists as typed, told apart from "the sheet names none". */
function fieldsOf(safety: SafetyView) {
  const list = (codes: string[] | null) => (codes ?? []).join(', ')
  return {
    revisedOn: safety.revisedOn,
    hazardCodes: list(safety.hazardCodes),
    noHazards: safety.hazardCodes?.length === 0,
    precautionaryCodes: list(safety.precautionaryCodes),
    signalWord: safety.signalWord ?? silent,
    protection: (safety.protection ?? []).join('\n'),
    storageGroup: safety.storageGroup ?? silent,
    unNumber: safety.unNumber ?? '',
    ph: safety.ph,
    maker: safety.maker,
    note: safety.note,
  }
}

type Typed = ReturnType<typeof fieldsOf>

function readOff(typed: Typed): SafetyFields {
  const codes = (text: string) => text.split(/[\s,;]+/).filter(Boolean)
  const lines = typed.protection
    .split('\n')
    .map(line => line.trim())
    .filter(Boolean)
  const orSilent = <T,>(list: T[]) => (list.length > 0 ? list : null)
  return {
    revisedOn: typed.revisedOn,
    hazardCodes: typed.noHazards ? [] : orSilent(codes(typed.hazardCodes)),
    precautionaryCodes: orSilent(codes(typed.precautionaryCodes)),
    signalWord: typed.signalWord === silent ? null : (typed.signalWord as SafetyFields['signalWord']),
    protection: orSilent(lines),
    storageGroup: typed.storageGroup === silent ? null : (typed.storageGroup as SafetyFields['storageGroup']),
    unNumber: typed.unNumber.trim() || null,
    ph: typed.ph,
    maker: typed.maker,
    note: typed.note,
  }
}

/** What a person reads off the data sheet. An empty field means that the sheet is silent, and is told so. */
export function SafetyForm({ safety, onClose }: { safety: SafetyView; onClose(): void }) {
  const { productId, version } = safety
  const form = useForm({
    saved: fieldsOf(safety),
    version,
    saving: trpc.safety.save.mutationOptions(),
    send: (value, version) => ({ productId, ...(version > 0 && { version }), ...readOff(value) }),
    done: onClose,
  })
  const { value, change } = form
  return (
    <Form
      form={form}
      label={say('Data sheet of {productName}', { productName: safety.productName })}
      onCancel={onClose}
    >
      <div className={pieces.fields}>
        <OptionalDateField label={say('Revised on')} {...form.field('revisedOn')} />
        <Select
          label={say('Signal word')}
          data={[
            { value: silent, label: say('not found') },
            { value: 'Danger', label: say('Danger') },
            { value: 'Warning', label: say('Warning') },
            { value: 'none', label: say('The sheet says: none') },
          ]}
          {...form.choice('signalWord')}
        />
        <Select
          label={say('Hazards')}
          data={[
            { value: 'codes', label: say('As the codes say') },
            { value: 'none', label: say('The sheet says: not hazardous') },
          ]}
          allowDeselect={false}
          value={value.noHazards ? 'none' : 'codes'}
          onChange={choice => change({ noHazards: choice === 'none' })}
        />
        <TextInput
          label={say('Hazard codes')}
          placeholder="H225, H319"
          disabled={value.noHazards}
          {...form.field('hazardCodes')}
        />
        <TextInput
          label={say('Precautionary codes')}
          placeholder="P210, P280"
          {...form.field('precautionaryCodes')}
        />
        <Select
          label={say('Stored with')}
          data={[
            { value: silent, label: say('not found') },
            ...storageGroups.map(group => ({ value: group as string, label: say(storageGroupWords[group]) })),
          ]}
          {...form.choice('storageGroup')}
        />
        <TextInput label={say('UN number')} placeholder={say('UN 1219')} {...form.field('unNumber')} />
        <OptionalDecimalInput label={say('pH')} most={14} {...form.field('ph')} />
        <Textarea
          className={pieces.whole}
          label={say('Protective equipment, a line each')}
          autosize
          minRows={2}
          {...form.field('protection')}
        />
        <TextInput
          className={pieces.whole}
          label={say('Maker or importer, with telephone')}
          description={say('whom a label must name')}
          {...form.field('maker')}
        />
        <Textarea className={pieces.whole} label={say('Note')} autosize minRows={1} {...form.field('note')} />
      </div>
    </Form>
  )
}
