import type { BoardView } from '../../../main/api/views.ts'
import { longWords, nearWords } from '../../parts/time.ts'
import styles from './Board.module.css'
import { rowOf } from './boardTypes.ts'
import type { Move } from './move/useMove.ts'

function verdictOf(move: Move, board: BoardView): { tone: 'asking' | 'ok' | 'refused'; words: string } {
  const bay = board.bays[rowOf(board, move.bayId)]?.name ?? ''
  const place = `${move.stay.plate} to ${bay}, ${nearWords(move.startAt, board.zone, board.nowAt)}`
  const verdict = move.verdict
  if (!verdict) return { tone: 'asking', words: `${place} …` }
  if (verdict.ok) {
    const promise = verdict.promiseKept ? 'the promise is kept' : 'the customer’s promise would slip'
    return {
      tone: verdict.promiseKept ? 'ok' : 'refused',
      words: `${place}: fits; home ${longWords(verdict.handoverAt, board.zone)}, ${promise}. ${verdict.words.join(' ')}`,
    }
  }
  const nearest = verdict.nearest
  const hint = nearest
    ? ` Nearest that works: ${board.bays[rowOf(board, nearest.bayId)]?.name}, ${nearWords(nearest.startAt, board.zone, board.nowAt)} (N).`
    : ''
  return { tone: 'refused', words: `${place}: not possible. ${verdict.reasons.join(' ')}${hint}` }
}

/** Below the board: what the present move would do and why it is refused, or the keys that work now. */
export function StatusLine({ board, move }: { board: BoardView; move: Move | null }) {
  const verdict = move && verdictOf(move, board)
  return (
    <div className={styles.status} data-tone={verdict?.tone}>
      <span aria-live="polite" data-testid="board-status">
        {verdict?.words ?? ''}
      </span>
      <span className={styles.keys}>
        {move ? (
          <>
            <kbd>←</kbd> <kbd>→</kbd> time · <kbd>↑</kbd> <kbd>↓</kbd> bay · <kbd>Enter</kbd> put down ·{' '}
            <kbd>Esc</kbd> leave
          </>
        ) : (
          <>
            <kbd>arrows</kbd> choose · <kbd>Enter</kbd> open · <kbd>M</kbd> move · <kbd>1</kbd> <kbd>3</kbd>{' '}
            <kbd>7</kbd> days · <kbd>E</kbd> <kbd>L</kbd> earlier, later · <kbd>T</kbd> today
          </>
        )}
      </span>
    </div>
  )
}
