import { Group, TextInput } from '@mantine/core'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'

interface Props {
  kind: 'demoted' | 'retired'
  set: { id: string; version: number; name: string; pieces: number; next: string | null; due: object | null }
  onClose(): void
}

/** A set goes to coarser work, or some of its pieces go for good: by their washes, or by sight. */
export function SetForm({ kind, set, onClose }: Props) {
  const form = useForm({
    saved: { pieces: set.pieces, reason: set.due ? say('washed often enough') : '' },
    saving: trpc.shelf.changeSet.mutationOptions(),
    send: ({ pieces, reason }) => ({
      id: set.id,
      version: set.version,
      act: kind === 'retired' ? { kind, pieces } : { kind },
      reason,
    }),
    done: onClose,
  })
  const title =
    kind === 'retired'
      ? say('Retire {name}', { name: set.name })
      : say('{name}: from now on for {next}', { name: set.name, next: set.next ?? '' })
  return (
    <Form
      form={form}
      label={title}
      save={kind === 'retired' ? say('Retire them') : say('Demote it')}
      onCancel={onClose}
    >
      <h3>{title}</h3>
      <Group align="flex-start">
        {kind === 'retired' && (
          <DecimalInput label={say('Pieces')} w={110} whole autoFocus {...form.field('pieces')} />
        )}
        <TextInput
          label={say('Why')}
          placeholder={say('frayed at the edge')}
          w={280}
          {...form.field('reason')}
        />
      </Group>
    </Form>
  )
}
