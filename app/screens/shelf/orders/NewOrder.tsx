import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { say } from '../../../../main/domain/language/index.ts'
import { type FormOf, useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'
import { choicesOf } from '../../../parts/shopWords.ts'

interface Wanted {
  supplierId: string | null
  productId: string | null
}

/** An order by hand: the supplier, and the first thing wanted of it; the rest is changed on the draft. */
export function NewOrder() {
  const navigate = useNavigate()
  const form: FormOf<Wanted> = useForm({
    saved: { supplierId: null, productId: null },
    saving: trpc.orders.save.mutationOptions(),
    send: ({ supplierId }) =>
      supplierId !== null && offer
        ? { supplierId, note: '', lines: [{ offerId: offer.id, packs: 1 }] }
        : null,
    done: order => void navigate({ to: '/shelf/$section/$id', params: { section: 'orders', id: order.id } }),
  })
  const { supplierId, productId } = form.value
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  const products = useQuery(trpc.shelf.list.queryOptions()).data
  const offers = useQuery({
    ...trpc.shelf.product.queryOptions({ id: productId ?? '' }),
    enabled: productId !== null,
  }).data?.offers
  const offer = offers?.find(each => each.supplierId === supplierId && each.archivedAt === null)
  if (!suppliers?.length) return null
  return (
    <details className={pieces.card}>
      <summary>{say('Write an order by hand')}</summary>
      <Form form={form} label={say('A new order')} save={say('Write it')} ready={offer !== undefined}>
        <Select
          mt="sm"
          label={say('Supplier')}
          data={choicesOf(suppliers)}
          allowDeselect={false}
          {...form.field('supplierId')}
        />
        <Select
          label={say('First product')}
          searchable
          data={choicesOf(products?.filter(item => item.unit !== null))}
          {...form.field('productId')}
          error={
            productId !== null && supplierId !== null && offers && !offer
              ? say('This supplier has no offer for it: add one on the product’s page.')
              : undefined
          }
        />
      </Form>
    </details>
  )
}
