import { Alert, Button } from '@mantine/core'
import { type ReactNode, useState } from 'react'
import type { ActView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { faultsOf } from '../../parts/faults.ts'
import styles from './Upkeep.module.css'

export interface Acts {
  /** Tells that something was taken back elsewhere. */
  undone(words: string): void
  /** Tells what was done, with a button to take it back. */
  done(act: ActView): void
  bar: ReactNode
}

/** The last thing done about a visit or a car, and its way back. */
export function useActs(): Acts {
  const [last, setLast] = useState<ActView | null>(null)
  const [undone, setUndone] = useState<string | null>(null)
  const undoing = useSaving(trpc.upkeep.undo.mutationOptions())
  const words = faultsOf(undoing.error).rest()
  const undo = (act: ActView) =>
    undoing.save({ actId: act.actId }, () => {
      setLast(null)
      setUndone(`Taken back: ${act.words}.`)
    })
  return {
    undone: words => {
      setLast(null)
      setUndone(`Taken back: ${words}.`)
    },
    done: act => {
      undoing.reset()
      setUndone(null)
      setLast(act)
    },
    bar: (
      <div role="status" aria-label="Last act" className={styles.acts}>
        {last && (
          <>
            <span>✓ {last.words}</span>
            <Button variant="default" size="compact-sm" loading={undoing.busy} onClick={() => undo(last)}>
              Undo
            </Button>
          </>
        )}
        {undone}
        {words && (
          <Alert color="red" variant="outline">
            {words}
          </Alert>
        )}
      </div>
    ),
  }
}
