import { say } from '../../../main/domain/language/index.ts'
import { SectionScreen } from '../../parts/Sections.tsx'
import { Mend } from './mend/Mend.tsx'
import { Relay } from './relay/Relay.tsx'
import { Use } from './use/Use.tsx'
import { WhatIf } from './whatIf/WhatIf.tsx'

const sections = [
  { section: 'mend', label: say('Set right'), Section: Mend },
  { section: 'relay', label: say('Re-lay the floor'), Section: Relay },
  { section: 'what-if', label: say('What if'), Section: WhatIf },
  { section: 'use', label: say('Use of the bays'), Section: Use },
]

/** The day plan: whether every car has its best place, what if not, and what the bays' time went into. */
export const Plan = () => <SectionScreen label={say('Day plan')} to="/plan/$section" sections={sections} />
