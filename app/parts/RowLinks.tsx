import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import pieces from './pieces.module.css'

export interface RowLink {
  id: string
  title: ReactNode
  about: ReactNode
  archived?: boolean
}

interface Props {
  label: string
  to: '/money/$section/$id' | '/shelf/$section/$id' | '/upkeep/$section/$id'
  section: string
  rows: readonly RowLink[]
  /** The one shown where the address names none. */
  current?: string
}

/** The rows of a section to choose from. */
export function RowLinks({ label, to, section, rows, current }: Props) {
  return (
    <ul className={pieces.rows} aria-label={label}>
      {rows.map(({ id, title, about, archived }) => (
        <li key={id} data-archived={archived}>
          <Link to={to} params={{ section, id }} aria-current={id === current ? true : undefined}>
            <b>{title}</b>
            <small>{about}</small>
          </Link>
        </li>
      ))}
    </ul>
  )
}
