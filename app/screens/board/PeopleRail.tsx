import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import styles from './Board.module.css'

/** What a dragged person is called among what may be dropped on the board. */
export const personType = 'application/x-lustrum-person'

/** The crew, each to be dragged onto a car: what of it is theirs is then chosen. By key it is P on the car. */
export function PeopleRail() {
  const crew = useQuery(trpc.crew.list.queryOptions()).data ?? []
  if (crew.length === 0) return null
  return (
    <ul className={styles.people} aria-label={say('The crew: drag somebody onto a car, or press P on it')}>
      {crew.map(({ id, name }) => (
        <li
          key={id}
          draggable
          onDragStart={event => {
            event.dataTransfer.setData(personType, id)
            event.dataTransfer.effectAllowed = 'copy'
          }}
        >
          {name}
        </li>
      ))}
    </ul>
  )
}
