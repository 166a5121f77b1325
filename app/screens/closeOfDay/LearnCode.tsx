import { Button, Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'

interface Props {
  code: string
  onLearned(productId: string): void
  onClose(): void
}

/** An unknown code is told once what it stands on, and known from then on. */
export function LearnCode({ code, onLearned, onClose }: Props) {
  const [productId, setProductId] = useState<string | null>(null)
  const [sizeId, setSizeId] = useState<string | null>(null)
  const products = useQuery(trpc.shelf.list.queryOptions()).data
  const sizes = useQuery({
    ...trpc.shelf.product.queryOptions({ id: productId ?? '' }),
    enabled: productId !== null,
  }).data?.sizes.filter(size => size.archivedAt === null)
  const saving = useSaving(trpc.shelf.learnCode.mutationOptions())
  const faults = faultsOf(saving.error)
  const learn = () => {
    if (productId !== null) saving.save({ code, productId, sizeId }, () => onLearned(productId))
  }
  return (
    <Form error={saving.error} label={`What ${code} stands on`} onSave={learn}>
      <Group align="flex-start">
        <Select
          label="It stands on"
          placeholder="type a part of the name"
          searchable
          autoFocus
          nothingFoundMessage="No product by these letters."
          data={(products ?? [])
            .filter(item => item.unit !== null)
            .map(item => ({ value: item.id, label: item.name }))}
          value={productId}
          onChange={value => {
            setProductId(value)
            setSizeId(null)
          }}
          error={faults.at('productId')}
        />
        <Select
          label="In the size"
          placeholder="any"
          clearable
          clearButtonProps={{ 'aria-label': 'Any size' }}
          disabled={!sizes?.length}
          data={(sizes ?? []).map(size => ({ value: size.id, label: size.label }))}
          value={sizeId}
          onChange={setSizeId}
          error={faults.at('sizeId')}
        />
      </Group>
      <FormFoot faults={faults} busy={saving.busy} label="Remember it" dirty={productId !== null}>
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
