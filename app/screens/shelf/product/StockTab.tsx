import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { LotView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { documentHref } from '../../../data/door.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { amountText, yearDateWords } from '../../../parts/shelf/amounts.ts'
import { BottleBar } from '../../../parts/shelf/BottleBar.tsx'
import { CountForm } from '../../../parts/shelf/CountForm.tsx'
import styles from '../Shelf.module.css'
import { Ledger } from './Ledger.tsx'
import { ReceiveForm } from './ReceiveForm.tsx'
import { TakeForm, type TakeKind } from './TakeForm.tsx'

type Doing = { act: 'receive' } | { act: 'count' | TakeKind; lotId: string } | null

const acts: { act: 'count' | TakeKind; label: string }[] = [
  { act: 'count', label: 'Count' },
  { act: 'use', label: 'Use' },
  { act: 'waste', label: 'Throw away' },
  { act: 'returnToSupplier', label: 'Send back' },
]

/** The bottles with what may be done to each, and every move there ever was. */
export function StockTab({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const [doing, setDoing] = useState<Doing>(null)
  const lot = doing && 'lotId' in doing ? product.lots.find(each => each.id === doing.lotId) : undefined
  const [said, setSaid] = useState<string[]>([])
  const opening = useSaving(trpc.shelf.openLot.mutationOptions())
  const done = ({ words }: { words: string[] }) => {
    setSaid(words)
    setDoing(null)
  }
  const close = () => setDoing(null)
  const lots = product.lots.filter(lot => lot.onHand > 0)
  return (
    <div className={styles.two}>
      <div className={styles.card}>
        <h2>Bottles</h2>
        <BottleBar name={product.name} unit={unit} lots={lots} />
        <div role="status">
          {said.map(words => (
            <p key={words} className={styles.said}>
              ✓ {words}
            </p>
          ))}
        </div>
        {opening.error !== null && (
          <p role="alert" className={styles.late}>
            {faultOf(opening.error).message}
          </p>
        )}
        {lots.length > 0 && (
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Bottle</th>
                <th scope="col" className={styles.number}>
                  Holds
                </th>
                <th scope="col">Use by</th>
                <th scope="col">
                  <span className={styles.soft}>What may be done</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {lots.map(lot => (
                <BottleRow
                  key={lot.id}
                  lot={lot}
                  unit={unit}
                  start={act => setDoing({ act, lotId: lot.id })}
                  open={() => opening.save({ productId: product.id, lotId: lot.id }, done)}
                />
              ))}
            </tbody>
          </table>
        )}
        {doing === null && (
          <Group mt="md">
            <Button onClick={() => setDoing({ act: 'receive' })}>Receive</Button>
          </Group>
        )}
        {doing?.act === 'receive' && <ReceiveForm product={product} onDone={done} onClose={close} />}
        {doing?.act === 'count' && (
          <CountForm
            key={doing.lotId}
            product={{ id: product.id, name: product.name, unit }}
            lots={product.lots}
            lotId={doing.lotId}
            onDone={done}
            onClose={close}
          />
        )}
        {doing && lot && doing.act !== 'receive' && doing.act !== 'count' && (
          <TakeForm
            key={`${doing.act}-${doing.lotId}`}
            kind={doing.act}
            product={product}
            unit={unit}
            lot={lot}
            onDone={done}
            onClose={close}
          />
        )}
      </div>
      <Ledger product={product} unit={unit} />
    </div>
  )
}

interface RowProps {
  lot: LotView
  unit: ShelfUnit
  start(act: 'count' | TakeKind): void
  open(): void
}

function BottleRow({ lot, unit, start, open }: RowProps) {
  return (
    <tr>
      <td>
        <b>no. {lot.number}</b> {lot.next && '← next'}
        <small>
          {[
            lot.sizeLabel,
            lot.batch && `batch ${lot.batch}`,
            lot.openedOn && `opened ${yearDateWords(lot.openedOn)}`,
          ]
            .filter(Boolean)
            .join(' · ')}
        </small>
      </td>
      <td className={styles.number}>{amountText(lot.onHand, unit)}</td>
      <td className={lot.state === 'expired' ? styles.late : undefined}>
        {lot.lastOn ? yearDateWords(lot.lastOn) : 'keeps'}
        {lot.state === 'expired' && ' ✕ past'}
      </td>
      <td>
        <Group gap={2}>
          {lot.state === 'sealed' && (
            <Button variant="subtle" size="compact-xs" aria-label={`Open no. ${lot.number}`} onClick={open}>
              Open
            </Button>
          )}
          {acts.map(({ act, label }) => (
            <Button
              key={act}
              variant="subtle"
              size="compact-xs"
              aria-label={`${label} no. ${lot.number}`}
              onClick={() => start(act)}
            >
              {label}
            </Button>
          ))}
          <Button
            component="a"
            variant="subtle"
            size="compact-xs"
            href={documentHref(`/documents/label/${lot.id}.pdf`)}
            target="_blank"
            rel="noreferrer"
            aria-label={`Label for a decanted bottle of no. ${lot.number}, PDF`}
          >
            Label
          </Button>
        </Group>
      </td>
    </tr>
  )
}
