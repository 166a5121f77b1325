import { ActionIcon, Button, Checkbox, Group, Select, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { useQuery } from '@tanstack/react-query'
import type { ShelfProductView, SupplierOfferView } from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, MoneyInput, OptionalDecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'

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
  const { value: fields, change: set, faults } = form
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  const setBreak = (i: number, part: Partial<(typeof fields.breaks)[number]>) =>
    set({ breaks: fields.breaks.map((each, at) => (at === i ? { ...each, ...part } : each)) })
  if (suppliers?.length === 0) return <p className={styles.empty}>Add a supplier first, under Suppliers.</p>
  return (
    <Form
      form={form}
      label={offer ? `Offer of ${offer.supplierName}` : 'A new offer'}
      onCancel={onClose}
      more={
        <>
          <Button
            variant="subtle"
            onClick={() =>
              set({
                breaks: [
                  ...fields.breaks,
                  ...fields.breaks
                    .slice(-1)
                    .map(({ fromPacks, packPriceMinor }) => ({ fromPacks: fromPacks * 2, packPriceMinor })),
                ],
              })
            }
          >
            Cheaper from more
          </Button>

          {offer && offer.archivedAt === null && (
            <ArchiveButton
              row={offer}
              api={{ archive: trpc.shelf.archiveOffer }}
              label="Archive this offer"
              onArchived={onClose}
            />
          )}
        </>
      }
    >
      <h3>{offer ? offer.supplierName : 'A new offer'}</h3>
      <div className={styles.fields}>
        <Select
          label="Supplier"
          data={(suppliers ?? []).map(each => ({ value: each.id, label: each.name }))}
          {...form.choice('supplierId')}
        />
        <Select
          label="Size"
          data={sizes.map(size => ({ value: size.id, label: size.label }))}
          {...form.choice('sizeId')}
        />
        <DecimalInput
          label="In one pack"
          least={1}
          most={10_000}
          whole
          {...form.field('containersPerPack')}
        />
        <TextInput label="Their article number" {...form.field('article')} />
        <OptionalDecimalInput
          label="Days to its date on arrival"
          unit="days"
          {...form.field('shelfLifeDays')}
        />
        <Checkbox mt={28} label="Propose orders from this offer" {...form.tick('preferred')} />
      </div>
      {fields.breaks.map((each, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the list
        <Group key={i} align="flex-start">
          <DecimalInput
            label={i === 0 ? 'From packs' : `From packs, price ${i + 1}`}
            w={150}
            value={each.fromPacks}
            onChange={fromPacks => setBreak(i, { fromPacks })}
            error={faults.at(`breaks.${i}.fromPacks`)}
          />
          <MoneyInput
            label={i === 0 ? 'One pack costs' : `One pack costs, price ${i + 1}`}
            w={190}
            value={each.packPriceMinor}
            onChange={packPriceMinor => setBreak(i, { packPriceMinor })}
            error={faults.at(`breaks.${i}.packPriceMinor`) ?? (i === 0 ? faults.at('breaks') : undefined)}
          />
          {fields.breaks.length > 1 && (
            <ActionIcon
              variant="subtle"
              mt={28}
              aria-label={`Remove price ${i + 1}`}
              onClick={() => set({ breaks: fields.breaks.filter((_, at) => at !== i) })}
            >
              <IconX size="1rem" />
            </ActionIcon>
          )}
        </Group>
      ))}
    </Form>
  )
}
