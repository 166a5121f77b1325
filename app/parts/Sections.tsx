import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'

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
  /** The section that the address names. */
  chosen: Section | undefined
  className: string | undefined
}

/** The section named by the address; the first where it names none. */
export function useSection(sections: readonly Section[]): {
  chosen: Section | undefined
  id: string | undefined
} {
  const { section, id } = useParams({ strict: false })
  return { chosen: sections.find(each => each.section === section) ?? sections[0], id }
}

/** The list of a screen's sections. */
export function SectionNav({ label, to, sections, chosen, className }: Props) {
  return (
    <nav className={className} aria-label={label}>
      {to === '/settings/$section' && <h1>{label}</h1>}
      {sections
        .filter(each => !each.under)
        .map(each => (
          <Link
            key={each.section}
            to={to}
            params={{ section: each.section }}
            data-within={chosen?.under === each.section}
          >
            {each.label}
          </Link>
        ))}
    </nav>
  )
}
