import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'
import { Boundary } from './Boundary.tsx'
import frame from './Frame.module.css'
import pieces from './pieces.module.css'
import styles from './Sections.module.css'

export interface SectionProps {
  /** The row chosen in a section; "new" for one not there yet. */
  id: string | undefined
}

interface Section {
  section: string
  label: string
  Section: ComponentType<SectionProps>
  /** Belongs to another section and has no place of its own in the list. */
  under?: string
}

interface Props {
  label: string
  to: '/money/$section' | '/plan/$section' | '/shelf/$section' | '/upkeep/$section' | '/settings/$section'
  sections: readonly Section[]
  /** Whether a section begins anew with another row. */
  anew?: boolean
}

/** A screen of several sections: the list of them, and the one the address names; the first where it names none. */
export function SectionScreen({ label, to, sections, anew }: Props) {
  const aside = to === '/settings/$section'
  const { section, id } = useParams({ strict: false })
  const chosen = sections.find(each => each.section === section) ?? sections[0]
  if (!chosen) return null
  const shown = (
    <Boundary drawnFor={`${chosen.section} ${id}`}>
      <chosen.Section key={anew ? id : chosen.section} id={id} />
    </Boundary>
  )
  return (
    <div className={aside ? styles.beside : pieces.column}>
      <nav className={aside ? styles.aside : pieces.nav} aria-label={label}>
        {aside && <h1>{label}</h1>}
        {sections
          .filter(each => !each.under)
          .map(each => (
            <Link
              key={each.section}
              to={to}
              params={{ section: each.section }}
              className={aside ? frame.link : undefined}
              data-within={chosen.under === each.section}
            >
              {each.label}
            </Link>
          ))}
      </nav>
      {aside ? <div className={pieces.column}>{shown}</div> : shown}
    </div>
  )
}
