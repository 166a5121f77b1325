import { SectionScreen } from '../../parts/Sections.tsx'
import { Relay } from './relay/Relay.tsx'
import { Use } from './use/Use.tsx'
import { WhatIf } from './whatIf/WhatIf.tsx'

const sections = [
  { section: 'relay', label: 'Re-lay the floor', Section: Relay },
  { section: 'what-if', label: 'What if', Section: WhatIf },
  { section: 'use', label: 'Use of the bays', Section: Use },
]

/** The day plan: whether every car has its best place, what if not, and what the bays' time went into. */
export const Plan = () => <SectionScreen label="Day plan" to="/plan/$section" sections={sections} />
