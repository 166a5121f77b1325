import { Button, Group, Select, Text, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import type { ProductView } from '../../../../main/api/views.ts'
import { type CureProfile, commonPracticeProfile } from '../../../../main/domain/cure/index.ts'
import type { ProductKind } from '../../../../main/domain/shop/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { productKindChoices } from '../../../parts/shopWords.ts'
import styles from '../Settings.module.css'
import { CureBand } from './CureBand.tsx'
import { ProfileEditor } from './ProfileEditor.tsx'

interface Fields {
  name: string
  kind: ProductKind
  cureProfile: CureProfile | null
}

const fresh = (): Fields => ({ name: '', kind: 'coating', cureProfile: commonPracticeProfile() })

/** One product; for a coating or topper with its curve and every figure of its profile. */
export function ProductEditor({ product }: { product: ProductView | undefined }) {
  const navigate = useNavigate()
  const saved: Fields = product
    ? { name: product.name, kind: product.kind, cureProfile: product.cureProfile }
    : fresh()
  const form = useForm({
    saved,
    version: product?.version,
    saving: trpc.products.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(product && { id: product.id, version }) }),
    done: ({ id }) => {
      if (!product) void navigate({ to: '/settings/$section/$id', params: { section: 'products', id } })
    },
  })
  const { change, faults } = form
  const { kind, cureProfile } = form.value
  const choose = (next: ProductKind) => {
    const cures = next === 'coating' || next === 'topper'
    change({ kind: next, cureProfile: cures ? (cureProfile ?? commonPracticeProfile()) : null })
  }
  return (
    <>
      <div className={styles.card}>
        <Form
          form={form}
          label={product ? product.name : 'A new product'}
          more={
            cureProfile && (
              <Button variant="subtle" onClick={() => change({ cureProfile: commonPracticeProfile() })}>
                Fill in common practice
              </Button>
            )
          }
        >
          <Group align="flex-start">
            <TextInput label="Name" w={320} autoFocus={!product} {...form.field('name')} />
            <Select
              label="Kind"
              w={200}
              allowDeselect={false}
              data={productKindChoices}
              value={kind}
              onChange={value => value && choose(value as ProductKind)}
              error={faults.at('kind')}
            />
          </Group>
          {cureProfile && (
            <>
              <CureBand profile={cureProfile} />
              <ProfileEditor
                profile={cureProfile}
                onChange={next => change({ cureProfile: next })}
                faults={faults}
              />
            </>
          )}
        </Form>
      </div>
      {product && product.usedIn.length > 0 && (
        <Text c="dimmed" size="sm">
          Used in {product.usedIn.map(each => each.name).join(', ')}.
        </Text>
      )}
      {product && (
        <ArchiveButton
          row={product}
          archive={trpc.products.archive.mutationOptions()}
          restore={trpc.products.restore.mutationOptions()}
          label="Archive this product"
        />
      )}
    </>
  )
}
