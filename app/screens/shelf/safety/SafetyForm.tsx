import { Button, Select, Textarea, TextInput } from '@mantine/core'
import type { SafetyFields, SafetyView } from '../../../../main/api/views.ts'
import { storageGroups, storageGroupWords } from '../../../../main/domain/hazard/index.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { OptionalDecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'

const silent = 'silent'

/** The form's own texts: lists as typed, told apart from "the sheet names none". */
function fieldsOf(safety: SafetyView) {
  const list = (codes: string[] | null) => (codes ?? []).join(', ')
  return {
    revisedOn: safety.revisedOn ?? '',
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
    revisedOn: typed.revisedOn || null,
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
  const draft = useDraft(fieldsOf(safety), safety.version)
  const saving = useSaving(trpc.safety.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const { value, change } = draft
  const save = () =>
    saving.save(
      {
        productId: safety.productId,
        ...(safety.version > 0 ? { version: safety.version } : {}),
        ...readOff(value),
      },
      () => {
        draft.settle()
        onClose()
      },
    )
  return (
    <Form error={saving.error} label={`Data sheet of ${safety.productName}`} onSave={save}>
      <div className={styles.fields}>
        <TextInput
          type="date"
          label="Revised on"
          value={value.revisedOn}
          onChange={event => change({ revisedOn: event.currentTarget.value })}
          error={faults.at('revisedOn')}
        />
        <Select
          label="Signal word"
          data={[
            { value: silent, label: 'not found' },
            { value: 'Danger', label: 'Danger' },
            { value: 'Warning', label: 'Warning' },
            { value: 'none', label: 'The sheet says: none' },
          ]}
          allowDeselect={false}
          value={value.signalWord}
          onChange={signalWord => signalWord && change({ signalWord: signalWord as Typed['signalWord'] })}
          error={faults.at('signalWord')}
        />
        <Select
          label="Hazards"
          data={[
            { value: 'codes', label: 'As the codes say' },
            { value: 'none', label: 'The sheet says: not hazardous' },
          ]}
          allowDeselect={false}
          value={value.noHazards ? 'none' : 'codes'}
          onChange={choice => change({ noHazards: choice === 'none' })}
        />
        <TextInput
          label="Hazard codes"
          placeholder="H225, H319"
          disabled={value.noHazards}
          value={value.hazardCodes}
          onChange={event => change({ hazardCodes: event.currentTarget.value })}
          error={faults.under('hazardCodes')}
        />
        <TextInput
          label="Precautionary codes"
          placeholder="P210, P280"
          value={value.precautionaryCodes}
          onChange={event => change({ precautionaryCodes: event.currentTarget.value })}
          error={faults.under('precautionaryCodes')}
        />
        <Select
          label="Stored with"
          data={[
            { value: silent, label: 'not found' },
            ...storageGroups.map(group => ({ value: group as string, label: storageGroupWords[group] })),
          ]}
          allowDeselect={false}
          value={value.storageGroup}
          onChange={group => group && change({ storageGroup: group as Typed['storageGroup'] })}
          error={faults.at('storageGroup')}
        />
        <TextInput
          label="UN number"
          placeholder="UN 1219"
          value={value.unNumber}
          onChange={event => change({ unNumber: event.currentTarget.value })}
          error={faults.at('unNumber')}
        />
        <OptionalDecimalInput
          label="pH"
          value={value.ph}
          onChange={ph => change({ ph })}
          error={faults.at('ph')}
        />
        <Textarea
          className={styles.whole}
          label="Protective equipment, a line each"
          autosize
          minRows={2}
          value={value.protection}
          onChange={event => change({ protection: event.currentTarget.value })}
          error={faults.under('protection')}
        />
        <TextInput
          className={styles.whole}
          label="Maker or importer, with telephone"
          description="whom a label must name"
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          value={value.maker}
          onChange={event => change({ maker: event.currentTarget.value })}
          error={faults.at('maker')}
        />
        <Textarea
          className={styles.whole}
          label="Note"
          autosize
          minRows={1}
          value={value.note}
          onChange={event => change({ note: event.currentTarget.value })}
          error={faults.at('note')}
        />
      </div>
      <FormFoot
        faults={faults}
        busy={saving.busy}
        outdated={draft.outdated}
        onReload={() => {
          saving.reset()
          draft.reload()
        }}
      >
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
