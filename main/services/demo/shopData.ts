import type { OpeningHours } from '../../domain/calendar/index.ts'
import { type Capability, type LentKind, type Skill, usualConditionFactors } from '../../domain/shop/index.ts'

/** An invented shop. Its phone number is one kept for fiction, its mail domain one kept for examples. */
export const demoShop = {
  name: 'Tern Lane Paint Care',
  zone: 'America/New_York',
  currency: 'USD',
  units: 'us' as const,
  country: 'US',
  // Chosen, and not as is usual in its country.
  clockHours: 24,
  dateOrder: 'dayFirst',
  weekBegins: 1,
  gridMin: 15,
  handoverRule: 'minimum',
  phone: '+12125550100',
  email: 'desk@example.com',
  address: '12 Tern Lane, Harrowmere',
  demo: true,
  conditionFactors: { ...usualConditionFactors },
}

/** Monday to Friday 08:00 to 18:00, Saturday 09:00 to 15:00. */
export const demoHours: OpeningHours[] = [
  ...[1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 })),
  { weekday: 6, from: 540, to: 900 },
]

export const demoBays: { id: string; name: string; capabilities: Capability[]; offers: string[] }[] = [
  { id: 'demo-bay-1', name: 'Bay 1', capabilities: ['wet'], offers: ['extraction'] },
  { id: 'demo-bay-2', name: 'Bay 2', capabilities: ['polish', 'clean'], offers: ['inspection light'] },
  {
    id: 'demo-bay-3',
    name: 'Bay 3',
    capabilities: ['polish', 'clean', 'cure'],
    offers: ['extraction', 'inspection light'],
  },
  {
    id: 'demo-bay-4',
    name: 'Bay 4',
    capabilities: ['clean', 'cure'],
    offers: ['dust-isolated', 'extraction', 'heated', 'inspection light'],
  },
]

export const demoCrew: { id: string; name: string; skills: Skill[]; noticeDays?: number }[] = [
  { id: 'demo-crew-1', name: 'Mika', skills: ['wash', 'polish'] },
  { id: 'demo-crew-2', name: 'Jo', skills: ['polish', 'coat'] },
  { id: 'demo-crew-3', name: 'Sal', skills: ['wash', 'coat'] },
  // From outside, for leather; asked two days before.
  { id: 'demo-crew-4', name: 'Edda', skills: ['outside'], noticeDays: 2 },
]

export const demoLendables: { id: string; name: string; kind: LentKind }[] = [
  { id: 'demo-lend-1', name: 'Blue loan car', kind: 'loan car' },
  { id: 'demo-lend-2', name: 'Key box 1', kind: 'key box' },
  { id: 'demo-lend-3', name: 'Carport left', kind: 'covered place' },
]
