import { Button, Group, Select, Text, TextInput } from '@mantine/core'
import type { ProductView } from '../../../../main/api/views.ts'
import { type CureProfile, commonPracticeProfile } from '../../../../main/domain/cure/index.ts'
import type { ProductKind } from '../../../../main/domain/shop/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { productKindChoices } from '../../../parts/shopWords.ts'
import { RowEditor, useRowForm } from '../RowEditor.tsx'
import { CureBand } from './CureBand.tsx'
import { ProfileEditor } from './ProfileEditor.tsx'

interface Fields {
  name: string
  kind: ProductKind
  cureProfile: CureProfile | null
}

/** One product; for a coating or topper with its curve and every figure of its profile. */
export function ProductEditor({ product }: { product: ProductView | undefined }) {
  const saved: Fields = product
    ? { name: product.name, kind: product.kind, cureProfile: product.cureProfile }
    : { name: '', kind: 'coating', cureProfile: commonPracticeProfile() }
  const form = useRowForm('products', product, saved, trpc.products.save.mutationOptions())
  const { change } = form
  const { cureProfile } = form.value
  const choose = (kind: string | null) =>
    kind !== null &&
    change({
      kind: kind as ProductKind,
      cureProfile: kind === 'coating' || kind === 'topper' ? (cureProfile ?? commonPracticeProfile()) : null,
    })
  const fillIn = cureProfile && (
    <Button variant="subtle" onClick={() => change({ cureProfile: commonPracticeProfile() })}>
      Fill in common practice
    </Button>
  )
  const use = product && product.usedIn.length > 0 && (
    <Text c="dimmed" size="sm">
      Used in {product.usedIn.map(each => each.name).join(', ')}.
    </Text>
  )
  return (
    <RowEditor form={form} row={product} what="product" api={trpc.products} more={fillIn} beside={use}>
      <Group align="flex-start">
        <TextInput label="Name" w={320} autoFocus={!product} {...form.field('name')} />
        <Select label="Kind" w={200} data={productKindChoices} {...form.choice('kind')} onChange={choose} />
      </Group>
      {cureProfile && (
        <>
          <CureBand profile={cureProfile} />
          <ProfileEditor
            profile={cureProfile}
            onChange={next => change({ cureProfile: next })}
            faults={form.faults}
          />
        </>
      )}
    </RowEditor>
  )
}
