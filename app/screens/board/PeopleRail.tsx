import { useQuery } from '@tanstack/react-query'
import { type PointerEvent, useRef, useState } from 'react'
import type { BoardView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import { keyOf } from './boardTypes.ts'
import styles from './PeopleRail.module.css'

interface Props {
  board: BoardView
  /** Asks what of a car is theirs. */
  people(jobId: string, toId: string): void
}

interface Carried {
  readonly name: string
  readonly x: number
  readonly y: number
  /** The plate of the car under the pointer; null: there is none. */
  readonly plate: string | null
}

/** A press that moves further than this many pixels carries. */
const slack = 5
/** How near the edge of the window scrolls it: the car may stand above what is seen. */
const edge = 48

/** The crew, each carried onto a car by mouse or finger: what of it is theirs is then chosen. By key it is P on the car. */
export function PeopleRail({ board, people }: Props) {
  const crew = useQuery(trpc.crew.list.queryOptions()).data ?? []
  const grip = useRef<{ x: number; y: number } | null>(null)
  const [carried, setCarried] = useState<Carried | null>(null)
  if (crew.length === 0) return null
  const carry = ({ clientX: x, clientY: y }: PointerEvent, name: string) => {
    if (!grip.current) return
    if (carried === null && Math.hypot(x - grip.current.x, y - grip.current.y) <= slack) return
    if (y < edge) window.scrollBy(0, y - edge)
    else if (y > window.innerHeight - edge) window.scrollBy(0, y - window.innerHeight + edge)
    setCarried({ name, x, y, plate: stayUnder(board, x, y)?.plate ?? null })
  }
  const letGo = () => {
    grip.current = null
    setCarried(null)
  }
  return (
    <>
      <ul
        className={`${styles.people} ${pieces.unprinted}`}
        aria-label={say('The crew: drag somebody onto a car, or press P on it')}
      >
        {crew.map(({ id, name }) => (
          <li
            key={id}
            onPointerDown={event => {
              if (event.button !== 0) return
              grip.current = { x: event.clientX, y: event.clientY }
              event.currentTarget.setPointerCapture(event.pointerId)
            }}
            onPointerMove={event => carry(event, name)}
            onPointerUp={event => {
              const stay = carried && stayUnder(board, event.clientX, event.clientY)
              letGo()
              if (stay) people(stay.jobId, id)
            }}
            onPointerCancel={letGo}
          >
            {name}
          </li>
        ))}
      </ul>
      {carried && (
        <div className={styles.carried} style={{ left: carried.x, top: carried.y }} aria-hidden="true">
          {carried.plate === null ? carried.name : `${carried.name} → ${carried.plate}`}
        </div>
      )}
    </>
  )
}

/** The car at this point of the window. */
function stayUnder(board: BoardView, x: number, y: number) {
  const id = document.elementFromPoint(x, y)?.id
  return board.stays.find(stay => `stay-${keyOf(stay)}` === id) ?? null
}
