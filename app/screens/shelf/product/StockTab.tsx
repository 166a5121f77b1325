import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { LotView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { decimalNow, say } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { Say } from '../../../parts/Say.tsx'
import { yearDateWords } from '../../../parts/shelf/amounts.ts'
import { BottleBar } from '../../../parts/shelf/BottleBar.tsx'
import { CountForm } from '../../../parts/shelf/CountForm.tsx'
import { Table } from '../../../parts/Table.tsx'
import styles from '../Shelf.module.css'
import { Ledger } from './Ledger.tsx'
import { MixForm } from './MixForm.tsx'
import { ReceiveForm } from './ReceiveForm.tsx'
import { TakeForm, type TakeKind } from './TakeForm.tsx'
import { WasteForm } from './WasteForm.tsx'

type LotAct = 'count' | 'waste' | TakeKind
type Doing = { act: 'receive' | 'mix' } | { act: LotAct; lot: LotView } | null

const acts: { act: LotAct; label: string }[] = [
  { act: 'count', label: say('Count') },
  { act: 'use', label: say('Use') },
  { act: 'waste', label: say('Throw away') },
  { act: 'returnToSupplier', label: say('Send back') },
]

/** Five of them stand in each row. */
const small = { variant: 'subtle', size: 'compact-xs' }

/** The bottles with what may be done to each, and every move there ever was. */
export function StockTab({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const [doing, setDoing] = useState<Doing>(null)
  const [said, setSaid] = useState<string[]>([])
  const opening = useSaving(trpc.shelf.openLot.mutationOptions())
  const done = ({ words }: { words: string[] }) => {
    setSaid(words)
    setDoing(null)
  }
  const whole = { product, unit, onDone: done, onClose: () => setDoing(null) }
  const lots = product.lots.filter(lot => lot.onHand > 0)
  const chosen = doing && 'lot' in doing ? product.lots.find(lot => lot.id === doing.lot.id) : undefined
  const actsOf = (lot: LotView) => (
    <Group gap={2}>
      {lot.state === 'sealed' && (
        <RowButton
          {...small}
          does={say('Open')}
          of={say('no. {number}', { number: lot.number })}
          onClick={() => opening.save({ productId: product.id, lotId: lot.id }, done)}
        />
      )}
      {acts.map(({ act, label }) => (
        <RowButton
          key={act}
          {...small}
          does={label}
          of={say('no. {number}', { number: lot.number })}
          onClick={() => setDoing({ act, lot })}
        />
      ))}
      <DocumentButton
        {...small}
        path={`/documents/label/${lot.id}.pdf`}
        aria-label={say('Label for a decanted bottle of no. {number}, PDF', { number: lot.number })}
      >
        {say('Label')}
      </DocumentButton>
    </Group>
  )
  return (
    <div className={pieces.two}>
      <Card title={say('Bottles')}>
        <BottleBar name={product.name} unit={unit} lots={lots} />
        <div role="status">
          {said.map(words => (
            <p key={words} className={styles.said}>
              ✓ {words}
            </p>
          ))}
        </div>
        <Refused of={opening.error} />
        {lots.length > 0 && (
          <Table
            rows={lots}
            keyOf={lot => lot.id}
            columns={[
              {
                head: say('Bottle'),
                cell: ({ number, next }) => (
                  <>
                    <Say text="<b>no. {number}</b>" values={{ number }} /> {next && say('← next')}
                  </>
                ),
                small: aboutWords,
              },
              { head: say('Holds'), number: true, cell: lot => amountText(lot.onHand, unit) },
              {
                head: say('Use by'),
                cell: ({ state, lastOn }) => (
                  <span className={state === 'expired' ? pieces.late : undefined}>
                    {lastOn ? yearDateWords(lastOn) : say('keeps')}
                    {state === 'expired' && ` ${say('✕ past')}`}
                  </span>
                ),
              },
              { head: say('What may be done'), cell: actsOf },
            ]}
          />
        )}
        {doing === null && (
          <Group mt="md">
            {product.madeFrom && (
              <Button onClick={() => setDoing({ act: 'mix' })}>{say('Mix a batch')}</Button>
            )}
            <Button
              variant={product.madeFrom ? 'default' : 'filled'}
              onClick={() => setDoing({ act: 'receive' })}
            >
              {say('Receive')}
            </Button>
          </Group>
        )}
        {doing?.act === 'mix' && product.madeFrom && <MixForm {...whole} madeFrom={product.madeFrom} />}
        {doing?.act === 'receive' && <ReceiveForm {...whole} />}
        {doing?.act === 'count' && (
          <CountForm
            key={doing.lot.id}
            {...whole}
            product={{ ...product, unit }}
            lots={product.lots}
            lotId={doing.lot.id}
          />
        )}
        {doing?.act === 'waste' && chosen && <WasteForm key={chosen.id} {...whole} lot={chosen} />}
        {(doing?.act === 'use' || doing?.act === 'returnToSupplier') && chosen && (
          <TakeForm key={`${doing.act}-${chosen.id}`} {...whole} kind={doing.act} lot={chosen} />
        )}
      </Card>
      <Ledger product={product} unit={unit} />
    </div>
  )
}

function aboutWords({ sizeLabel, batch, openedOn, waterParts }: LotView): string {
  const on = openedOn && yearDateWords(openedOn)
  const about = [
    sizeLabel,
    batch && say('batch {batch}', { batch }),
    on &&
      (waterParts === null
        ? say('opened {on}', { on })
        : say('mixed 1:{waterParts} {on}', { waterParts: decimalNow(waterParts), on })),
  ]
  return about.filter(Boolean).join(' · ')
}
