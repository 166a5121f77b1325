import { Button, Group, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import type { ReusablesView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { IconAct } from '../../../parts/IconAct.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'

/** What pieces are good for one after the other, and for how many washes each. */
export function GradesForm({ productId, reusables }: { productId: string; reusables: ReusablesView }) {
  const form = useForm({
    saved: {
      grades: reusables?.grades ?? [
        { name: say('Finish'), washes: 15 },
        { name: say('Wheels'), washes: 15 },
      ],
    },
    version: reusables?.version ?? 0,
    saving: trpc.shelf.saveGrades.mutationOptions(),
    send: ({ grades }, version) => ({ productId, version, grades }),
  })
  const { grades } = form.value
  return (
    <Card title={say('Washed and used again')}>
      <p className={pieces.soft}>
        {say(
          'The finest use first. After so many washes a set is proposed for the next use, after the last for the bin; your eyes may say so sooner. The washes are yours to set (common practice, no source).',
        )}
      </p>
      <Form
        form={form}
        label={say('What the pieces are good for')}
        ready={form.dirty || !reusables}
        more={
          <Button
            variant="subtle"
            onClick={() => form.change({ grades: [...grades, { name: '', washes: 10 }] })}
          >
            {say('A coarser use')}
          </Button>
        }
      >
        {form.each<(typeof grades)[number]>('grades').map((grade, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a use is its place
          <Group key={i} align="flex-end">
            <TextInput label={say('Used for')} w={200} {...grade.field('name')} />
            <DecimalInput label={say('Washes')} w={110} whole {...grade.field('washes')} />
            {grades.length > 1 && (
              <IconAct
                label={say('Leave out {name}', { name: grade.value.name || say('this use') })}
                icon={IconX}
                onClick={() => form.change({ grades: grades.toSpliced(i, 1) })}
              />
            )}
          </Group>
        ))}
      </Form>
    </Card>
  )
}
