import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'

/** What was laid on the car before this program, or elsewhere. */
export function LayerForm({ car, onDone }: { car: CarView; onDone(): void }) {
  const lives = useQuery(trpc.upkeep.products.queryOptions()).data ?? []
  const form = useForm({
    saved: { productId: null as string | null, laidOn: car.today },
    saving: trpc.upkeep.recordLayer.mutationOptions(),
    send: ({ productId, laidOn }) => ({ vehicleId: car.vehicleId, productId: productId ?? '', laidOn }),
    done: onDone,
  })
  return (
    <Form form={form} label={say('Enter a coating or topper')} save={say('Enter it')} onCancel={onDone}>
      <h3>{say('Enter a coating or topper')}</h3>
      <div className={pieces.fields}>
        <Select
          label={say('Product')}
          placeholder={say('Choose one')}
          data={lives.map(life => ({ value: life.productId, label: life.productName }))}
          searchable
          {...form.field('productId')}
        />
        <DateField label={say('Laid on')} {...form.field('laidOn')} />
      </div>
    </Form>
  )
}
