import { Link } from '@tanstack/react-router'
import { useEffect, useRef } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { LearnCode } from './LearnCode.tsx'
import type { ScanAnswer as Answer } from './useScan.ts'

interface Props {
  answer: Answer
  onLearned(productId: string): void
  onClose(): void
}

/** What the last code stands for, or what to do where it stands for nothing yet. */
export function ScanAnswer({ answer, onLearned, onClose }: Props) {
  const box = useRef<HTMLDivElement>(null)
  const { kind, code } = answer
  useEffect(() => {
    // A known one is scrolled to where it is counted.
    if (kind !== 'known' && kind !== 'bottle' && code) box.current?.scrollIntoView({ block: 'nearest' })
  }, [kind, code])
  return (
    <div ref={box} className={pieces.card} role="status" aria-label={say('Scanned')}>
      <ScanWords answer={answer} />
      {answer.kind === 'unknown' ? (
        <LearnCode key={answer.code} code={answer.code} onLearned={onLearned} onClose={onClose} />
      ) : (
        <RowButton does={say('Close')} variant="subtle" onClick={onClose} />
      )}
    </div>
  )
}

function ScanWords({ answer }: { answer: Answer }) {
  if (answer.kind === 'known') {
    const total = answer.lots.reduce((sum, lot) => sum + lot.onHand, 0)
    const product = (
      <>
        <Link to="/shelf/$section/$id" params={{ section: 'product', id: answer.productId }}>
          {answer.productName}
        </Link>
        {answer.sizeLabel && `, ${answer.sizeLabel}`}
      </>
    )
    const values = { code: answer.code, product, total: amountText(total, answer.unit) }
    return (
      <p>
        {answer.lots.length > 0 ? (
          <Say text="<b>{code}</b> is {product}: {total} on the shelf. Count it below." values={values} />
        ) : (
          <Say
            text="<b>{code}</b> is {product}: {total} on the shelf. Receive it on its page."
            values={values}
          />
        )}
      </p>
    )
  }
  if (answer.kind === 'bottle')
    return (
      <p>
        {say('{productName}: {words}. Count it below.', {
          productName: answer.productName,
          words: answer.lot.words,
        })}
      </p>
    )
  return (
    <p className={answer.kind === 'unknown' ? undefined : pieces.late}>
      <b>{answer.code}</b> {answer.words}
    </p>
  )
}
