import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'
import { Boundary } from './Boundary.tsx'

export interface SectionProps {
  /** The row chosen in a section; "new" for one not there yet. */
  id: string | undefined
}

export interface Section {
  section: string
  label: string
  Section: ComponentType<SectionProps>
  /** Belongs to another section and has no place of its own in the list. */
  under?: string
}

interface Props {
  label: string
  to: '/shelf/$section' | '/upkeep/$section' | '/settings/$section'
  sections: readonly Section[]
  /** The screen's own look, and its list's. */
  className: string | undefined
  navClassName: string | undefined
  /** A box around the section, where the screen wants one. */
  sectionClassName?: string | undefined
  /** Whether a section begins anew with another row. */
  anew?: boolean
}

/** A screen of several sections: the list of them, and the one the address names; the first where it names none. */
export function SectionScreen(props: Props) {
  const { label, to, sections, className, navClassName, sectionClassName, anew } = props
  const { section, id } = useParams({ strict: false })
  const chosen = sections.find(each => each.section === section) ?? sections[0]
  if (!chosen) return null
  const shown = (
    <Boundary drawnFor={`${chosen.section} ${id}`}>
      <chosen.Section key={anew ? id : chosen.section} id={id} />
    </Boundary>
  )
  return (
    <div className={className}>
      <nav className={navClassName} aria-label={label}>
        {to === '/settings/$section' && <h1>{label}</h1>}
        {sections
          .filter(each => !each.under)
          .map(each => (
            <Link
              key={each.section}
              to={to}
              params={{ section: each.section }}
              data-within={chosen.under === each.section}
            >
              {each.label}
            </Link>
          ))}
      </nav>
      {sectionClassName ? <div className={sectionClassName}>{shown}</div> : shown}
    </div>
  )
}
