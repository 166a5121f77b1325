import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { IntervalView } from '../../../../main/api/views.ts'
import { say, word } from '../../../../main/domain/language/index.ts'
import { useEditing } from '../../../data/editing.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { Table } from '../../../parts/Table.tsx'

const marks = ([word('data sheet'), word('common practice'), word('set by the shop')] as const).map(
  (value: IntervalView['productMark']) => ({ value, label: say(value) }),
)

/** How long each coating and topper is taken to last before anything is seen of it. */
export function Lives() {
  const lives = useQuery(trpc.upkeep.products.queryOptions()).data ?? []
  const { editing, edit, close } = useEditing()
  const chosen = lives.find(life => life.productId === editing)
  return (
    <Card title={say('How long products last')}>
      <Table
        rows={lives}
        keyOf={life => life.productId}
        empty={say('No coating or topper is kept yet; products are entered in the settings.')}
        columns={[
          { head: say('Product'), cell: life => life.productName },
          {
            head: say('Renewed after'),
            number: true,
            cell: life => say('{intervalDays} days', { intervalDays: life.intervalDays }),
          },
          { head: say('Taken from'), cell: life => say(life.mark) },
          {
            head: say('Change'),
            cell: life => (
              <RowButton
                does={say('Change')}
                of={say('how long {productName} lasts', { productName: life.productName })}
                onClick={edit(life.productId)}
              />
            ),
          },
        ]}
      />
      {chosen && <LifeForm key={chosen.productId} life={chosen} onDone={close} />}
      <p className={pieces.soft}>
        {say(
          'At ordinary exposure. It is where learning begins; inspections take its place as they come in.',
        )}
      </p>
    </Card>
  )
}

interface LifeFormProps {
  life: {
    productId: string
    productName: string
    intervalDays: number
    mark: IntervalView['productMark']
    shape: number
    ageSpread: number
    shapeSpread: number
    version: number
  }
  onDone(): void
}

function LifeForm({ life, onDone }: LifeFormProps) {
  const { productId, productName, version, ...saved } = life
  const form = useForm({
    saved,
    version,
    saving: trpc.upkeep.saveProduct.mutationOptions(),
    send: (value, version) => ({ ...value, productId, version }),
    done: onDone,
  })
  const { faults } = form
  const label = say('How long {productName} lasts', { productName })
  return (
    <Form form={form} label={label} onCancel={onDone}>
      <h3>{label}</h3>
      <div className={pieces.fields}>
        <DecimalInput
          label={say('Renewed after')}
          unit={say('d||days')}
          least={1}
          most={36_500}
          {...form.field('intervalDays')}
        />
        <Select label={say('Taken from')} data={marks} {...form.choice('mark')} />
        <DecimalInput
          label={say('How it wears out')}
          description={say('1 at random, 2 to 4 by age')}
          {...form.field('shape')}
          error={faults.at('life.shape')}
        />
        <DecimalInput
          label={say('How sure of the days')}
          description={say('0.35: to within a factor of 1.4, two times of three')}
          {...form.field('ageSpread')}
          error={faults.at('life.ageSpread')}
        />
        <DecimalInput
          label={say('How sure of the wear')}
          description={say('the same, of how it wears out')}
          {...form.field('shapeSpread')}
          error={faults.at('life.shapeSpread')}
        />
      </div>
    </Form>
  )
}
