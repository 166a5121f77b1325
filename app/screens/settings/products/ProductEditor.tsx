import { Button, Group, MultiSelect, Select, Text, TextInput } from '@mantine/core'
import type { ProductView } from '../../../../main/api/views.ts'
import { type CureProfile, commonPracticeProfile } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import type { CoatingFamily, PanelFinish, ProductKind } from '../../../../main/domain/shop/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { familyChoices, panelFinishChoices, productKindChoices } from '../../../parts/shopWords.ts'
import { RowEditor, useRowForm } from '../RowEditor.tsx'
import { CureBand } from './CureBand.tsx'
import { ProfileEditor } from './ProfileEditor.tsx'

interface Fields {
  name: string
  kind: ProductKind
  family: CoatingFamily
  finishes: PanelFinish[] | null
  cureProfile: CureProfile | null
}

/** One product; for a coating or topper with its curve and every figure of its profile. */
export function ProductEditor({ product }: { product: ProductView | undefined }) {
  const saved: Fields = product
    ? {
        name: product.name,
        kind: product.kind,
        family: product.family,
        finishes: product.finishes,
        cureProfile: product.cureProfile,
      }
    : { name: '', kind: 'coating', family: 'paint', finishes: null, cureProfile: commonPracticeProfile() }
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
      {say('Fill in common practice')}
    </Button>
  )
  const use = product && product.usedIn.length > 0 && (
    <Text c="dimmed" size="sm">
      {say('Used in {usedIn}.', { usedIn: product.usedIn.map(each => each.name).join(', ') })}
    </Text>
  )
  return (
    <RowEditor form={form} row={product} what={say('product')} api={trpc.products} more={fillIn} beside={use}>
      <Group align="flex-start">
        <TextInput label={say('Name')} w={320} autoFocus={!product} {...form.field('name')} />
        <Select
          label={say('Kind')}
          w={200}
          data={productKindChoices}
          {...form.choice('kind')}
          onChange={choose}
        />
        {form.value.kind === 'coating' && (
          <Select
            label={say('What it coats')}
            description={say('A booking takes one coating for each')}
            inputWrapperOrder={['label', 'input', 'description', 'error']}
            w={220}
            data={familyChoices}
            {...form.choice('family')}
          />
        )}
        <MultiSelect
          label={say('May touch')}
          description={say('Empty: what is usual for its kind (common practice)')}
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          miw={260}
          data={panelFinishChoices}
          {...form.field('finishes')}
          value={form.value.finishes ?? []}
        />
      </Group>
      {cureProfile && (
        <>
          <CureBand profile={cureProfile} onChange={next => change({ cureProfile: next })} />
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
