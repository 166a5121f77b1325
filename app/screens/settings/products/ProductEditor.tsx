import { Button, Group, Select, Text, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import type { ProductView } from '../../../../main/api/views.ts'
import { type CureProfile, commonPracticeProfile } from '../../../../main/domain/cure/index.ts'
import type { ProductKind } from '../../../../main/domain/shop/index.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
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
  const draft = useDraft(saved, product?.version ?? 0)
  const { name, kind, cureProfile } = draft.value
  const saving = useSaving(trpc.products.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const row = product ? { id: product.id, version: draft.version } : {}
  const save = () =>
    saving.save({ ...row, ...draft.value }, ({ id }) => {
      draft.settle()
      if (!product) void navigate({ to: '/settings/$section/$id', params: { section: 'products', id } })
    })
  const choose = (next: ProductKind) => {
    const cures = next === 'coating' || next === 'topper'
    draft.change({ kind: next, cureProfile: cures ? (cureProfile ?? commonPracticeProfile()) : null })
  }
  return (
    <>
      <div className={styles.card}>
        <Form error={saving.error} label={product ? product.name : 'A new product'} onSave={save}>
          <Group align="flex-start">
            <TextInput
              label="Name"
              w={320}
              autoFocus={!product}
              value={name}
              onChange={event => draft.change({ name: event.currentTarget.value })}
              error={faults.at('name')}
            />
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
                onChange={next => draft.change({ cureProfile: next })}
                faults={faults}
              />
            </>
          )}
          <FormFoot
            faults={faults}
            busy={saving.busy}
            dirty={draft.dirty}
            outdated={draft.outdated}
            onReload={() => {
              saving.reset()
              draft.reload()
            }}
          >
            {cureProfile && (
              <Button variant="subtle" onClick={() => draft.change({ cureProfile: commonPracticeProfile() })}>
                Fill in common practice
              </Button>
            )}
          </FormFoot>
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
