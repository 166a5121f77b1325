import { Button, Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import styles from '../Shelf.module.css'

/** An order by hand: the supplier, and the first thing wanted of it; the rest is changed on the draft. */
export function NewOrder() {
  const navigate = useNavigate()
  const [supplierId, setSupplierId] = useState<string | null>(null)
  const [productId, setProductId] = useState<string | null>(null)
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  const products = useQuery(trpc.shelf.list.queryOptions()).data
  const offers = useQuery({
    ...trpc.shelf.product.queryOptions({ id: productId ?? '' }),
    enabled: productId !== null,
  }).data?.offers
  const offer = offers?.find(each => each.supplierId === supplierId && each.archivedAt === null)
  const saving = useSaving(trpc.orders.save.mutationOptions())
  const write = () => {
    if (supplierId === null || !offer) return
    saving.save({ supplierId, note: '', lines: [{ offerId: offer.id, packs: 1 }] }, order => {
      setProductId(null)
      void navigate({ to: '/shelf/$section/$id', params: { section: 'orders', id: order.id } })
    })
  }
  if (!suppliers?.length) return null
  return (
    <details className={styles.card}>
      <summary>Write an order by hand</summary>
      <Form error={saving.error} label="A new order" onSave={write}>
        <Select
          mt="sm"
          label="Supplier"
          data={suppliers.map(each => ({ value: each.id, label: each.name }))}
          allowDeselect={false}
          value={supplierId}
          onChange={setSupplierId}
        />
        <Select
          label="First product"
          searchable
          data={(products ?? [])
            .filter(item => item.unit !== null)
            .map(item => ({ value: item.id, label: item.name }))}
          value={productId}
          onChange={setProductId}
          error={
            saving.error
              ? faultOf(saving.error).message
              : productId !== null && supplierId !== null && offers && !offer
                ? 'This supplier has no offer for it: add one on the product’s page.'
                : undefined
          }
        />
        <Group>
          <Button type="submit" size="xs" loading={saving.busy} disabled={!offer}>
            Write it
          </Button>
        </Group>
      </Form>
    </details>
  )
}
