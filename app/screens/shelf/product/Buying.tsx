import { ActionIcon, Button } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import type { ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { useEditing } from '../../../data/editing.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import { amountText } from '../../../parts/shelf/amounts.ts'
import styles from '../Shelf.module.css'
import { OfferForm } from './OfferForm.tsx'
import { SizeForm } from './SizeForm.tsx'

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
}

/** The sizes a product comes in with their codes, and from whom it is bought at which prices. */
export function Buying({ product, unit }: Props) {
  return (
    <div className={styles.two}>
      <Sizes product={product} unit={unit} />
      <Offers product={product} unit={unit} />
    </div>
  )
}

function Sizes({ product, unit }: Props) {
  const { editing, edit, close } = useEditing()
  return (
    <section className={styles.card} aria-label="Sizes">
      <h2>
        Sizes <small>what the label says and what it measures</small>
      </h2>
      {product.sizes.length === 0 && (
        <p className={styles.soft}>No size yet. Add the bottle that stands on the shelf.</p>
      )}
      {product.sizes.length > 0 && (
        <table className={styles.table}>
          <tbody>
            {product.sizes.map(size => (
              <tr key={size.id} data-past={size.archivedAt !== null}>
                <td>
                  <b>{size.label}</b> {amountText(size.labelAmount, unit)}
                  <small>{size.measuredWords ?? 'not measured'}</small>
                </td>
                <td>
                  {size.codes.length === 0 && 'no code learned'}
                  {size.codes.map(code => (
                    <Code key={code} code={code} />
                  ))}
                  <small>{size.tareG === null ? 'empty weight not known' : `${size.tareG} g empty`}</small>
                </td>
                <td>
                  <Button
                    variant="subtle"
                    size="compact-xs"
                    aria-label={`Change the size ${size.label}`}
                    onClick={edit(size.id)}
                  >
                    Change
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {editing ? (
        <SizeForm
          key={editing}
          product={product}
          unit={unit}
          size={product.sizes.find(size => size.id === editing) ?? null}
          onClose={close}
        />
      ) : (
        <Button variant="default" size="xs" mt="sm" onClick={edit('new')}>
          Add a size
        </Button>
      )}
    </section>
  )
}

/** A learned code, which may have been learned for the wrong product. */
function Code({ code }: { code: string }) {
  const forgetting = useSaving(trpc.shelf.forgetCode.mutationOptions())
  return (
    <div>
      {code}{' '}
      <ActionIcon
        variant="subtle"
        size="xs"
        loading={forgetting.busy}
        aria-label={`Forget the code ${code}`}
        onClick={() => forgetting.save({ code })}
      >
        <IconX size="0.9rem" />
      </ActionIcon>
    </div>
  )
}

function Offers({ product, unit }: Props) {
  const { currency } = useShop()
  const { editing, edit, close } = useEditing()
  const hundred = unit === 'piece' ? '100 pieces' : `100 ${unit}`
  return (
    <section className={styles.card} aria-label="Offers">
      <h2>
        Offers <small>the preferred one is what is proposed</small>
      </h2>
      {product.offers.length === 0 && (
        <p className={styles.soft}>
          No supplier yet. Without an offer nothing can be proposed when it runs short.
        </p>
      )}
      {product.offers.length > 0 && (
        <table className={styles.table}>
          <tbody>
            {product.offers.map(offer => (
              <tr key={offer.id} data-past={offer.archivedAt !== null}>
                <td>
                  <b>{offer.supplierName}</b> {offer.preferred && '★ preferred'}
                  <small>
                    {offer.containersPerPack > 1 && `${offer.containersPerPack} × `}
                    {offer.sizeLabel}
                    {offer.article && ` · ${offer.article}`}
                  </small>
                </td>
                <td>
                  {offer.breaks.map((each, i) => (
                    <small key={each.fromPacks}>
                      from {each.fromPacks}: {money(each.packPriceMinor, currency)} ·{' '}
                      {money(Math.round(offer.per100Minor[i] ?? 0), currency)} for {hundred}
                    </small>
                  ))}
                </td>
                <td>
                  <Button
                    variant="subtle"
                    size="compact-xs"
                    aria-label={`Change the offer of ${offer.supplierName}`}
                    onClick={edit(offer.id)}
                  >
                    Change
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {editing ? (
        <OfferForm
          key={editing}
          product={product}
          offer={product.offers.find(offer => offer.id === editing) ?? null}
          onClose={close}
        />
      ) : (
        <Button
          variant="default"
          size="xs"
          mt="sm"
          disabled={product.sizes.length === 0}
          onClick={edit('new')}
        >
          Add an offer
        </Button>
      )}
    </section>
  )
}
