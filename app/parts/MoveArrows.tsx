import { IconChevronDown, IconChevronUp } from '@tabler/icons-react'
import { say } from '../../main/domain/language/index.ts'
import { IconAct } from './IconAct.tsx'

interface Props {
  /** What is moved. */
  of: string
  place: number
  count: number
  onMove(by: 1 | -1): void
}

/** Moves something in a list a place up or down. */
export function MoveArrows({ of, place, count, onMove }: Props) {
  const last = place === count - 1
  return (
    <>
      <IconAct
        label={say('{of} further up', { of })}
        icon={IconChevronUp}
        disabled={place === 0}
        onClick={() => onMove(-1)}
      />
      <IconAct
        label={say('{of} further down', { of })}
        icon={IconChevronDown}
        disabled={last}
        onClick={() => onMove(1)}
      />
    </>
  )
}

/** The list with one of it moved. */
export function moved<T>(list: readonly T[], from: number, by: 1 | -1): T[] {
  const rest = list.filter((_, i) => i !== from)
  return [...rest.slice(0, from + by), list[from]!, ...rest.slice(from + by)]
}
