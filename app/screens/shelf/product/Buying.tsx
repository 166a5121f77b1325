import { Button } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import type { ReactNode } from 'react'
import type { ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText, comparedBy } from '../../../../main/domain/shelf/index.ts'
import { useEditing } from '../../../data/editing.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { IconAct } from '../../../parts/IconAct.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { type Column, Table } from '../../../parts/Table.tsx'
import { OfferForm } from './OfferForm.tsx'
import { SizeForm } from './SizeForm.tsx'

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
}

/** The sizes a product comes in with their codes, and from whom it is bought at which prices. */
export function Buying(props: Props) {
  return (
    <div className={pieces.two}>
      <Sizes {...props} />
      <Offers {...props} />
    </div>
  )
}

function Sizes({ product, unit }: Props) {
  return (
    <Edited
      rows={product.sizes}
      label={say('Sizes')}
      about={say('what the label says and what it measures')}
      empty={say('No size yet. Add the bottle that stands on the shelf.')}
      add={say('Add a size')}
      change={size => say('the size {label}', { label: size.label })}
      columns={[
        {
          cell: size => (
            <>
              <b>{size.label}</b> {amountText(size.labelAmount, unit)}
            </>
          ),
          small: size => size.measuredWords ?? say('not measured'),
        },
        {
          cell: ({ codes }) =>
            codes.length === 0 ? say('no code learned') : codes.map(code => <Code key={code} code={code} />),
          small: ({ tareG }) =>
            tareG === null
              ? say('empty weight not known')
              : say('{tare} empty', { tare: amountText(tareG, 'g') }),
        },
      ]}
      form={(size, close) => <SizeForm product={product} unit={unit} size={size} onClose={close} />}
    />
  )
}

function Offers({ product, unit }: Props) {
  const { currency } = useShop()
  const { words: comparedWords, hundreds } = comparedBy(unit)
  return (
    <Edited
      rows={product.offers}
      label={say('Offers||of a supplier')}
      about={say('the preferred one is what is proposed')}
      empty={say('No supplier yet. Without an offer nothing can be proposed when it runs short.')}
      add={say('Add an offer')}
      mayAdd={product.sizes.length > 0}
      change={offer => say('the offer of {supplierName}', { supplierName: offer.supplierName })}
      columns={[
        {
          cell: offer => (
            <>
              <b>{offer.supplierName}</b> {offer.preferred && say('★ preferred')}
            </>
          ),
          small: ({ containersPerPack, sizeLabel, article }) =>
            `${containersPerPack > 1 ? `${containersPerPack} × ` : ''}${sizeLabel}${article && ` · ${article}`}`,
        },
        {
          cell: offer =>
            offer.breaks.map(({ fromPacks, packPriceMinor }, i) => (
              <small key={fromPacks}>
                {say('from {fromPacks}: {packPriceMinor} · {per100Minor} for {unit}', {
                  fromPacks,
                  packPriceMinor: money(packPriceMinor, currency),
                  per100Minor: money(Math.round((offer.per100Minor[i] ?? 0) * hundreds), currency),
                  unit: comparedWords,
                })}
              </small>
            )),
        },
      ]}
      form={(offer, close) => <OfferForm product={product} offer={offer} onClose={close} />}
    />
  )
}

interface EditedProps<Row> {
  rows: readonly Row[]
  label: string
  about: string
  empty: string
  add: string
  mayAdd?: boolean
  change(row: Row): string
  columns: Column<Row>[]
  /** The form of a row, or of a new one. */
  form(row: Row | null, close: () => void): ReactNode
}

/** Rows in a card, of which one at a time is changed in place. */
function Edited<Row extends { id: string; archivedAt: number | null }>(props: EditedProps<Row>) {
  const { rows, label, about, empty, add, mayAdd = true, change, columns, form } = props
  const { editing, edit, close } = useEditing()
  const changed = {
    cell: (row: Row) => <RowButton does={say('Change')} of={change(row)} onClick={edit(row.id)} />,
  }
  return (
    <Card title={label} about={about} aria-label={label}>
      <Table
        rows={rows}
        keyOf={row => row.id}
        past={row => row.archivedAt !== null}
        empty={empty}
        columns={[...columns, changed]}
      />
      {editing ? (
        <div key={editing}>{form(rows.find(row => row.id === editing) ?? null, close)}</div>
      ) : (
        <Button variant="default" size="xs" mt="sm" disabled={!mayAdd} onClick={edit('new')}>
          {add}
        </Button>
      )}
    </Card>
  )
}

/** A learned code, which may have been learned for the wrong product. */
function Code({ code }: { code: string }) {
  const forgetting = useSaving(trpc.shelf.forgetCode.mutationOptions())
  return (
    <div>
      {code}{' '}
      <IconAct
        label={say('Forget the code {code}', { code })}
        icon={IconX}
        size="xs"
        loading={forgetting.busy}
        onClick={() => forgetting.save({ code })}
      />
    </div>
  )
}
