import { Button, Checkbox, Group, Select, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { useQuery } from '@tanstack/react-query'
import type { ShelfProductView, SupplierOfferView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { IconAct } from '../../../parts/IconAct.tsx'
import { DecimalInput, MoneyInput, OptionalDecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { choicesOf } from '../../../parts/shopWords.ts'

interface Props {
  product: ShelfProductView
  offer: SupplierOfferView | null
  onClose(): void
}

/** From whom, in which pack, at which prices. */
export function OfferForm({ product, offer, onClose }: Props) {
  const sizes = product.sizes.filter(size => size.archivedAt === null || size.id === offer?.sizeId)
  const form = useForm({
    saved: {
      supplierId: offer?.supplierId ?? '',
      sizeId: offer?.sizeId ?? sizes[0]?.id ?? '',
      article: offer?.article ?? '',
      containersPerPack: offer?.containersPerPack ?? 1,
      breaks: offer?.breaks ?? [{ fromPacks: 1, packPriceMinor: 0 }],
      shelfLifeDays: offer?.shelfLifeDays ?? null,
      preferred: offer?.preferred ?? product.offers.length === 0,
    },
    version: offer?.version,
    saving: trpc.shelf.saveOffer.mutationOptions(),
    send: (value, version) => ({ ...value, ...(offer && { id: offer.id, version }), productId: product.id }),
    done: onClose,
  })
  const { change } = form
  const { breaks } = form.value
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  const further = breaks.slice(-1).map(last => ({ ...last, fromPacks: last.fromPacks * 2 }))
  if (suppliers?.length === 0)
    return <p className={pieces.empty}>{say('Add a supplier first, under Suppliers.')}</p>
  return (
    <Form
      form={form}
      label={
        offer ? say('Offer of {supplierName}', { supplierName: offer.supplierName }) : say('A new offer')
      }
      onCancel={onClose}
      more={
        <>
          <Button variant="subtle" onClick={() => change({ breaks: [...breaks, ...further] })}>
            {say('Cheaper from more')}
          </Button>
          {offer && (
            <ArchiveButton
              row={offer}
              api={{ archive: trpc.shelf.archiveOffer, restore: trpc.shelf.restoreOffer }}
              label={say('Archive this offer')}
              onArchived={onClose}
              onRestored={onClose}
            />
          )}
        </>
      }
    >
      <h3>{offer?.supplierName ?? say('A new offer')}</h3>
      <div className={pieces.fields}>
        <Select label={say('Supplier')} data={choicesOf(suppliers)} {...form.choice('supplierId')} />
        <Select
          label={say('Size')}
          data={sizes.map(size => ({ value: size.id, label: size.label }))}
          {...form.choice('sizeId')}
        />
        <DecimalInput
          label={say('In one pack')}
          least={1}
          most={10_000}
          whole
          {...form.field('containersPerPack')}
        />
        <TextInput label={say('Their article number')} {...form.field('article')} />
        <OptionalDecimalInput
          label={say('Days to its date on arrival')}
          unit={say('days')}
          {...form.field('shelfLifeDays')}
        />
        <Checkbox mt={28} label={say('Propose orders from this offer')} {...form.tick('preferred')} />
      </div>
      {form.each<(typeof breaks)[number]>('breaks').map(({ field }, i) => {
        const which = i === 0 ? '' : say(', price {i}', { i: i + 1 })
        const price = field('packPriceMinor')
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the list
          <Group key={i} align="flex-start">
            <DecimalInput label={say('From packs{which}', { which })} w={150} {...field('fromPacks')} />
            <MoneyInput
              label={say('One pack costs{which}', { which })}
              w={190}
              {...price}
              error={price.error ?? (i === 0 ? form.faults.at('breaks') : undefined)}
            />
            {breaks.length > 1 && (
              <IconAct
                label={say('Remove price {i}', { i: i + 1 })}
                icon={IconX}
                mt={28}
                onClick={() => change({ breaks: breaks.filter((_, at) => at !== i) })}
              />
            )}
          </Group>
        )
      })}
    </Form>
  )
}
