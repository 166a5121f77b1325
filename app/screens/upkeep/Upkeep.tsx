import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'
import { Calls } from './calls/Calls.tsx'
import { Due } from './due/Due.tsx'
import { Feeds } from './feeds/Feeds.tsx'
import { Reminders } from './reminders/Reminders.tsx'
import { Results } from './results/Results.tsx'
import { Rules } from './rules/Rules.tsx'
import { Templates } from './templates/Templates.tsx'
import styles from './Upkeep.module.css'

export interface SectionProps {
  /** The row chosen in a section. */
  id: string | undefined
}

interface Section {
  section: string
  label: string
  Section: ComponentType<SectionProps>
}

const sections: Section[] = [
  { section: 'due', label: 'Due', Section: Due },
  { section: 'reminders', label: 'Reminders', Section: Reminders },
  { section: 'calls', label: 'Calls, texts and letters', Section: Calls },
  { section: 'results', label: 'Results', Section: Results },
  { section: 'templates', label: 'Templates', Section: Templates },
  { section: 'rules', label: 'Rules', Section: Rules },
  { section: 'feeds', label: 'Calendar feeds', Section: Feeds },
]

/** What follows a coating over the years: who is due, who is written to, and what came of it. */
export function Upkeep() {
  const { section, id } = useParams({ strict: false })
  const chosen = sections.find(each => each.section === section) ?? sections[0]!
  return (
    <div className={styles.screen}>
      <nav className={styles.nav} aria-label="Upkeep">
        {sections.map(each => (
          <Link key={each.section} to="/upkeep/$section" params={{ section: each.section }}>
            {each.label}
          </Link>
        ))}
      </nav>
      <chosen.Section id={id} />
    </div>
  )
}
