import { Group, TextInput } from '@mantine/core'
import { atWall, dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useNowAt } from '../../data/now.ts'
import type { SavingOptions } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { Form } from '../../parts/form/Form.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'
import { fullWords } from '../../parts/time.ts'
import { EditedRows } from './EditedRows.tsx'

export interface Stretch {
  id: string
  fromAt: number
  toAt: number
  reason: string
  version: number
}

export type EditedStretch = Omit<Stretch, 'id' | 'version'> & Partial<Pick<Stretch, 'id' | 'version'>>

interface Props<Owner extends object> {
  title: string
  empty: string
  addLabel: string
  reasonExample: string
  stretches: readonly Stretch[]
  /** Whose they are, as the save procedure has it: `{ bayId }` or `{ crewId }`. */
  owner: Owner
  save: SavingOptions<EditedStretch & Owner>
  remove: SavingOptions<{ id: string; version: number }>
}

/** Times a bay is closed or somebody is away, each from a moment to a moment. */
export function Stretches<Owner extends object>(props: Props<Owner>) {
  const { title, reasonExample, stretches, owner, save, ...rest } = props
  const { zone } = useShop()
  const nowAt = useNowAt()
  const tomorrow = dateOf((nowAt ?? 0) + 1440, zone)
  const fresh = { fromAt: atWall(tomorrow, 0, zone), toAt: atWall(tomorrow, 1440, zone), reason: '' }
  const nameOf = ({ fromAt, toAt }: Stretch) =>
    say('{fromAt} to {toAt}', { fromAt: fullWords(fromAt, zone), toAt: fullWords(toAt, zone) })
  return (
    <EditedRows
      {...rest}
      title={title}
      rows={stretches}
      nameOf={nameOf}
      wordsOf={each => (
        <>
          {nameOf(each)}
          {each.reason && <small>{each.reason}</small>}
        </>
      )}
      ready={nowAt !== null}
      form={(stretch, close) => (
        <StretchForm
          label={title}
          reasonExample={reasonExample}
          stretch={stretch}
          fresh={fresh}
          owner={owner}
          save={save}
          onDone={close}
        />
      )}
    />
  )
}

interface FormProps<Owner extends object> extends Pick<Props<Owner>, 'owner' | 'save' | 'reasonExample'> {
  label: string
  /** Undefined: a new one, which begins with `fresh`. */
  stretch: Stretch | undefined
  fresh: Pick<Stretch, 'fromAt' | 'toAt' | 'reason'>
  onDone(): void
}

function StretchForm<Owner extends object>(props: FormProps<Owner>) {
  const { label, reasonExample, stretch, fresh, owner, save, onDone } = props
  const { fromAt, toAt, reason } = stretch ?? fresh
  const form = useForm({
    saved: { fromAt, toAt, reason },
    version: stretch?.version,
    saving: save,
    send: (value, version) => ({ ...value, ...(stretch && { id: stretch.id, version }), ...owner }),
    done: onDone,
  })
  return (
    <Form form={form} label={label} onCancel={onDone}>
      <Group align="flex-start" gap="xl" mt="md">
        <MomentInput label={say('From')} {...form.field('fromAt')} />
        <MomentInput label={say('To')} {...form.field('toAt')} />
        <TextInput label={say('What for')} placeholder={reasonExample} w={240} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
