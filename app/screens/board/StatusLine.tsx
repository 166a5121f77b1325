import type { BoardView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import { longWords, nearWords } from '../../parts/time.ts'
import styles from './Board.module.css'
import { rowOf } from './boardTypes.ts'
import type { Move } from './move/useMove.ts'

function verdictOf(move: Move, board: BoardView): { tone: 'asking' | 'ok' | 'refused'; words: string } {
  const bay = board.bays[rowOf(board, move.bayId)]?.name ?? ''
  const place = say('{plate} to {bay}, {startAt}', {
    plate: move.stay.plate,
    bay,
    startAt: nearWords(move.startAt, board.zone, board.nowAt),
  })
  const verdict = move.verdict
  if (!verdict) return { tone: 'asking', words: `${place} …` }
  if (verdict.ok) {
    const values = {
      place,
      handoverAt: longWords(verdict.handoverAt, board.zone),
      join: verdict.words.join(' '),
    }
    return verdict.promiseKept
      ? { tone: 'ok', words: say('{place}: fits; home {handoverAt}, the promise is kept. {join}', values) }
      : {
          tone: 'refused',
          words: say('{place}: fits; ready {handoverAt}, later than promised. {join}', values),
        }
  }
  const nearest = verdict.nearest
  const refused = say('{place}: not possible. {reasons}', { place, reasons: verdict.reasons.join(' ') })
  if (!nearest) return { tone: 'refused', words: refused }
  const hint = say('Nearest that works: {name}, {startAt} (N).', {
    name: board.bays[rowOf(board, nearest.bayId)]?.name ?? '',
    startAt: nearWords(nearest.startAt, board.zone, board.nowAt),
  })
  return { tone: 'refused', words: `${refused} ${hint}` }
}

/** Below the board: what the present move would do and why it is refused, or the keys that work now. */
export function StatusLine({ board, move }: { board: BoardView; move: Move | null }) {
  const verdict = move && verdictOf(move, board)
  return (
    <div className={`${styles.status} ${pieces.unprinted}`} data-tone={verdict?.tone}>
      <span aria-live="polite" data-testid="board-status">
        {verdict?.words ?? ''}
      </span>
      <span className={styles.keys}>
        {move ? (
          <Say text="<kbd>←</kbd> <kbd>→</kbd> time · <kbd>↑</kbd> <kbd>↓</kbd> bay · <kbd>Enter</kbd> drop here · <kbd>Esc</kbd> cancel" />
        ) : (
          <Say text="<kbd>arrows</kbd> choose · <kbd>Enter</kbd> open · <kbd>M</kbd> move · <kbd>P</kbd> people · <kbd>1</kbd> <kbd>3</kbd> <kbd>7</kbd> days · <kbd>E</kbd> <kbd>L</kbd> earlier, later · <kbd>T</kbd> today" />
        )}
      </span>
    </div>
  )
}
