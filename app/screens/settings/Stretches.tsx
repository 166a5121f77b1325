import { Button, Group, TextInput } from '@mantine/core'
import { atWall, dateOf } from '../../../main/domain/calendar/index.ts'
import { useEditing } from '../../data/editing.ts'
import { useForm } from '../../data/form.ts'
import { useNowAt } from '../../data/now.ts'
import { type SavingOptions, useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { faultsOf } from '../../parts/faults.ts'
import { Form } from '../../parts/form/Form.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'
import { fullWords } from '../../parts/time.ts'
import styles from './Settings.module.css'

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
  const { title, empty, addLabel, reasonExample, stretches, owner, save, remove } = props
  const { zone } = useShop()
  const nowAt = useNowAt()
  const removing = useSaving(remove)
  const { editing, edit, close } = useEditing()
  const words = faultsOf(removing.error).rest()
  const fresh = (now: number) => {
    const tomorrow = dateOf(now + 1440, zone)
    return { fromAt: atWall(tomorrow, 0, zone), toAt: atWall(tomorrow, 1440, zone), reason: '' }
  }
  return (
    <section className={styles.card} aria-label={title}>
      <h3>{title}</h3>
      {stretches.length === 0 && editing === null && <p className={styles.soft}>{empty}</p>}
      <ul className={styles.list}>
        {stretches.map(each => {
          const when = `${fullWords(each.fromAt, zone)} to ${fullWords(each.toAt, zone)}`
          return (
            <li key={each.id}>
              <span className={styles.grow}>
                {when}
                {each.reason && <small>{each.reason}</small>}
              </span>
              <Button
                variant="default"
                size="compact-sm"
                aria-label={`Change ${when}`}
                onClick={edit(each.id)}
              >
                Change
              </Button>
              <Button
                variant="subtle"
                size="compact-sm"
                aria-label={`Remove ${when}`}
                onClick={() => removing.save({ id: each.id, version: each.version })}
              >
                Remove
              </Button>
            </li>
          )
        })}
      </ul>
      {words && <p role="alert">{words}</p>}
      {editing !== null && nowAt !== null ? (
        <StretchForm
          key={editing}
          label={title}
          reasonExample={reasonExample}
          stretch={stretches.find(each => each.id === editing)}
          fresh={fresh(nowAt)}
          owner={owner}
          save={save}
          onDone={close}
        />
      ) : (
        <Button mt="md" variant="default" disabled={nowAt === null} onClick={edit('new')}>
          {addLabel}
        </Button>
      )}
    </section>
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
        <MomentInput label="From" {...form.field('fromAt')} />
        <MomentInput label="To" {...form.field('toAt')} />
        <TextInput label="What for" placeholder={reasonExample} w={240} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
