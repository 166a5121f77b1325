import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { MoveView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { sentence } from '../../../../main/domain/words.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { client, trpc } from '../../../data/trpc.ts'
import { AskDialog } from '../../../parts/AskDialog.tsx'
import { Card } from '../../../parts/Card.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { RowButton } from '../../../parts/RowButton.tsx'
import { Table } from '../../../parts/Table.tsx'
import { fullWords } from '../../../parts/time.ts'
import { moveWords } from '../words.ts'

/** Every move of the product, newest first. Nothing is edited: a wrong line is put right by another that names it. */
export function Ledger({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const { zone } = useShop()
  const [older, setOlder] = useState<{ moves: MoveView[]; before: number | null } | null>(null)
  const [wrong, setWrong] = useState<MoveView | null>(null)
  const taking = useSaving(trpc.shelf.takeBack.mutationOptions())
  const before = older ? older.before : product.ledger.before
  const moves = [...product.ledger.moves, ...(older?.moves ?? [])]
  const corrected = new Set(moves.map(move => move.correctsSeq))
  const more = async () => {
    if (before === null) return
    const page = await client.shelf.ledger.query({ productId: product.id, before })
    setOlder({ moves: [...(older?.moves ?? []), ...page.moves], before: page.before })
  }
  return (
    <Card title={say('Ledger')} about={say('newest first')}>
      <Table
        rows={moves}
        keyOf={move => move.seq}
        past={move => corrected.has(move.seq)}
        empty={say(
          'No move yet. Receive what stands on the shelf; every line after that says who, when and why.',
        )}
        columns={[
          { head: say('When'), cell: move => fullWords(move.at, zone), small: move => move.by },
          {
            head: say('Amount'),
            number: true,
            cell: ({ amount }) => `${amount > 0 ? '+' : '−'}${amountText(Math.abs(amount), unit)}`,
          },
          {
            head: say('What'),
            cell: ({ kind, lotNumber, seq }) =>
              say('{moveWords}, no. {lotNumber}{corrected}', {
                moveWords: moveWords[kind],
                lotNumber,
                corrected: corrected.has(seq) ? ` ${say('(taken back)')}` : '',
              }),
            small: ({ job, why }) =>
              job ? (
                <Link to="/jobs/$id" params={{ id: job.id }}>
                  {job.plate}, {job.stepName}
                </Link>
              ) : (
                why
              ),
          },
          {
            head: say('Put right'),
            cell: move =>
              move.kind !== 'correction' &&
              !corrected.has(move.seq) && (
                <RowButton
                  does={say('Take back')}
                  aria-label={say('Take back: {words}', { words: move.words })}
                  onClick={() => setWrong(move)}
                />
              ),
          },
        ]}
      />
      <Refused of={taking.error} />
      {before !== null && (
        <Button variant="default" size="xs" mt="sm" onClick={() => void more()}>
          {say('Older ones')}
        </Button>
      )}
      {wrong && (
        <AskDialog
          title={say('Take this line back?')}
          words={say('{words} The line stays; another one undoes it and names it.', {
            words: sentence(wrong.words),
          })}
          label={say('Why')}
          action={say('Take it back')}
          busy={taking.busy}
          onClose={() => setWrong(null)}
          onSay={reason => {
            taking.save({ seq: wrong.seq, reason })
            setWrong(null)
          }}
        />
      )}
    </Card>
  )
}
