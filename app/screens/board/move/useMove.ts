import { notifications } from '@mantine/notifications'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import type { StayView, TriedMoveView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { client, faultOf, trpc } from '../../../data/trpc.ts'
import { useScreenKeys } from '../../../parts/useScreenKeys.ts'

/** A stay picked up, where it would go, and what the server says of that place; null while it is being asked. */
export interface Move {
  stay: StayView
  bayId: string
  startAt: number
  verdict: TriedMoveView | null
  /** Let go before the answer came: it is saved, kept in hand or given up when it does. */
  released: Release | null
}

/** What to do with a place that turns out refused: keep the stay in hand (keys), or put it back (mouse). */
export type Release = 'keep' | 'putBack'

export interface MoveControl {
  move: Move | null
  pickUp(stay: StayView): void
  /** Tries another place; the answer comes by itself. */
  to(bayId: string, startAt: number): void
  /** Saves the place as soon as it is found good. */
  drop(ifRefused: Release): void
  cancel(): void
}

function inputOf(move: Pick<Move, 'stay' | 'bayId' | 'startAt'>) {
  return {
    jobId: move.stay.jobId,
    version: move.stay.version,
    position: move.stay.position ?? 0,
    bayId: move.bayId,
    startAt: move.startAt,
  }
}

/**
 * Moving one stay, by mouse or by keys: every place is asked for while it is hovered, only a good one can be saved,
 * and a saved one can be taken back.
 */
export function useMove(): MoveControl {
  const queries = useQueryClient()
  const [move, setMove] = useState<Move | null>(null)
  const asked = useRef(0)
  const { save: commit } = useSaving(
    {
      mutationFn: async (moving: Move) => ({
        moving,
        saved: await client.board.move.mutate(inputOf(moving)),
      }),
    },
    {
      onSaved: ({ moving, saved }) => {
        const back = { bayId: moving.stay.bayId, startAt: moving.stay.fromAt }
        lastMove = { ...moving, ...back, stay: { ...moving.stay, version: saved.version } }
        notifications.show({
          title: say('{plate} moved', { plate: moving.stay.plate }),
          message: say('{join} Press Z to take it back.', { join: saved.words.join(' ') }),
          autoClose: 8_000,
        })
      },
      onRefused: error =>
        notifications.show({
          title: say('Not moved'),
          message: faultOf(error).message,
          color: 'red',
          autoClose: 10_000,
        }),
    },
  )

  const place = move ? `${move.stay.jobId} ${move.bayId} ${move.startAt}` : ''
  // biome-ignore lint/correctness/useExhaustiveDependencies: asks once a place, not once a verdict
  useEffect(() => {
    if (!move || move.verdict) return
    const turn = ++asked.current
    const answer = (verdict: TriedMoveView) => {
      if (asked.current === turn) setMove(current => current && { ...current, verdict })
    }
    const timer = setTimeout(() => {
      queries
        .fetchQuery(trpc.board.tryMove.queryOptions(inputOf(move), { staleTime: 0 }))
        .then(answer)
        .catch(error => answer({ ok: false, reasons: [faultOf(error).message], nearest: null }))
    }, 40)
    return () => clearTimeout(timer)
  }, [place])

  useScreenKeys({
    z: () => {
      if (!lastMove) return
      const undone = lastMove
      lastMove = null
      commit(undone)
    },
  })

  useEffect(() => {
    if (!move?.released || !move.verdict) return
    if (move.verdict.ok) commit(move)
    else if (move.released === 'putBack')
      notifications.show({
        title: say('Not there'),
        message: move.verdict.reasons.join(' '),
        color: 'red',
        autoClose: 10_000,
      })
    setMove(move.verdict.ok || move.released === 'putBack' ? null : { ...move, released: null })
  }, [move, commit])

  return {
    move,
    pickUp: stay => setMove({ stay, bayId: stay.bayId, startAt: stay.fromAt, verdict: null, released: null }),
    to: (bayId, startAt) =>
      setMove(current =>
        current && (current.bayId !== bayId || current.startAt !== startAt)
          ? { ...current, bayId, startAt, verdict: null, released: null }
          : current,
      ),
    drop: ifRefused =>
      setMove(current => {
        const stayed =
          current && current.bayId === current.stay.bayId && current.startAt === current.stay.fromAt
        return !current || stayed ? null : { ...current, released: ifRefused }
      }),
    cancel: () => setMove(null),
  }
}

/** The last saved move, the other way round; it outlives the screen so that it can be taken back on return. */
let lastMove: Move | null = null
