import { Button } from '@mantine/core'
import { type ReactNode, useState } from 'react'
import type { ActView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { ActsBar } from './ActsBar.tsx'

export interface Acts {
  /** Tells that something was taken back elsewhere. */
  undone(words: string): void
  /** Tells what was done, with a button to take it back. */
  done(act: ActView): void
  bar: ReactNode
}

/** The last thing done about a visit or a car, and its way back. */
export function useActs(): Acts {
  const [last, setLast] = useState<{ act: ActView } | { undone: string } | null>(null)
  const undoing = useSaving(trpc.upkeep.undo.mutationOptions())
  const undone = (words: string) => setLast({ undone: say('Taken back: {words}.', { words }) })
  return {
    undone,
    done: act => {
      undoing.reset()
      setLast({ act })
    },
    bar: (
      <ActsBar>
        {last && 'act' in last && (
          <>
            <span>✓ {last.act.words}</span>
            <Button
              variant="default"
              size="compact-sm"
              loading={undoing.busy}
              onClick={() => undoing.save({ actId: last.act.actId }, () => undone(last.act.words))}
            >
              {say('Undo')}
            </Button>
          </>
        )}
        {last && 'undone' in last && last.undone}
        <Refused of={undoing.error} />
      </ActsBar>
    ),
  }
}
