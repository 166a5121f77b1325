import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { MoveView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { client, faultOf, trpc } from '../../../data/trpc.ts'
import { AskDialog } from '../../../parts/AskDialog.tsx'
import { amountText } from '../../../parts/shelf/amounts.ts'
import { fullWords } from '../../../parts/time.ts'
import styles from '../Shelf.module.css'
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
    <div className={styles.card}>
      <h2>
        Ledger <small>newest first</small>
      </h2>
      {moves.length === 0 ? (
        <p className={styles.soft}>
          No move yet. Receive what stands on the shelf; every line after that says who, when and why.
        </p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col" className={styles.number}>
                Amount
              </th>
              <th scope="col">What</th>
              <th scope="col">
                <span className={styles.soft}>Put right</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {moves.map(move => (
              <tr key={move.seq} data-past={corrected.has(move.seq)}>
                <td>
                  {fullWords(move.at, zone)}
                  <small>{move.by}</small>
                </td>
                <td className={styles.number}>
                  {move.amount > 0 ? '+' : '−'}
                  {amountText(Math.abs(move.amount), unit)}
                </td>
                <td>
                  {moveWords[move.kind]}, no. {move.lotNumber}
                  {corrected.has(move.seq) && ' (taken back)'}
                  <small>
                    {move.job ? (
                      <Link to="/jobs/$id" params={{ id: move.job.id }}>
                        {move.job.plate}, {move.job.stepName}
                      </Link>
                    ) : (
                      move.why
                    )}
                  </small>
                </td>
                <td>
                  {move.kind !== 'correction' && !corrected.has(move.seq) && (
                    <Button
                      variant="subtle"
                      size="compact-xs"
                      aria-label={`Take back: ${move.words}`}
                      onClick={() => setWrong(move)}
                    >
                      Take back
                    </Button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {taking.error !== null && (
        <p role="alert" className={styles.late}>
          {faultOf(taking.error).message}
        </p>
      )}
      {before !== null && (
        <Button variant="default" size="xs" mt="sm" onClick={() => void more()}>
          Older ones
        </Button>
      )}
      {wrong && (
        <AskDialog
          title="Take this line back?"
          words={`${wrong.words}. The line stays; another one undoes it and names it.`}
          label="Why"
          action="Take it back"
          busy={taking.busy}
          onClose={() => setWrong(null)}
          onSay={reason => {
            taking.save({ seq: wrong.seq, reason })
            setWrong(null)
          }}
        />
      )}
    </div>
  )
}
