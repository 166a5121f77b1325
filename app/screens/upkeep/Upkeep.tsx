import { say } from '../../../main/domain/language/index.ts'
import { SectionScreen } from '../../parts/Sections.tsx'
import { Calls } from './calls/Calls.tsx'
import { Due } from './due/Due.tsx'
import { Feeds } from './feeds/Feeds.tsx'
import { Reminders } from './reminders/Reminders.tsx'
import { Results } from './results/Results.tsx'
import { Rules } from './rules/Rules.tsx'
import { Templates } from './templates/Templates.tsx'

const sections = [
  { section: 'due', label: say('Due'), Section: Due },
  { section: 'reminders', label: say('Reminders'), Section: Reminders },
  { section: 'calls', label: say('Calls, texts and letters'), Section: Calls },
  { section: 'results', label: say('Results'), Section: Results },
  { section: 'templates', label: say('Templates'), Section: Templates },
  { section: 'rules', label: say('Rules'), Section: Rules },
  { section: 'feeds', label: say('Calendar feeds'), Section: Feeds },
]

/** What follows a coating over the years: who is due, who is written to, and what came of it. */
export const Upkeep = () => <SectionScreen label={say('Upkeep')} to="/upkeep/$section" sections={sections} />
