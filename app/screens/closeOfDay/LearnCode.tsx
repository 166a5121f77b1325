import { Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'

interface Props {
  code: string
  onLearned(productId: string): void
  onClose(): void
}

/** An unknown code is told once what it stands on, and known from then on. */
export function LearnCode({ code, onLearned, onClose }: Props) {
  const form = useForm({
    saved: { productId: null as string | null, sizeId: null as string | null },
    saving: trpc.shelf.learnCode.mutationOptions(),
    send: ({ productId, sizeId }) => (productId === null ? null : { code, productId, sizeId }),
    done: () => productId !== null && onLearned(productId),
  })
  const { productId } = form.value
  const products = useQuery(trpc.shelf.list.queryOptions()).data
  const sizes = useQuery({
    ...trpc.shelf.product.queryOptions({ id: productId ?? '' }),
    enabled: productId !== null,
  }).data?.sizes.filter(size => size.archivedAt === null)
  return (
    <Form
      form={form}
      label={say('Which product has {code}', { code })}
      save={say('Remember it')}
      ready={productId !== null}
      onCancel={onClose}
    >
      <Group align="flex-start">
        <Select
          label={say('It belongs to')}
          placeholder={say('type a part of the name')}
          searchable
          autoFocus
          nothingFoundMessage={say('No product found.')}
          data={(products ?? [])
            .filter(item => item.unit !== null)
            .map(item => ({ value: item.id, label: item.name }))}
          value={productId}
          onChange={value => form.change({ productId: value, sizeId: null })}
          error={form.faults.at('productId')}
        />
        <Select
          label={say('In the size')}
          placeholder={say('any')}
          clearable
          clearButtonProps={{ 'aria-label': say('Any size') }}
          disabled={!sizes?.length}
          data={(sizes ?? []).map(size => ({ value: size.id, label: size.label }))}
          {...form.field('sizeId')}
        />
      </Group>
    </Form>
  )
}
