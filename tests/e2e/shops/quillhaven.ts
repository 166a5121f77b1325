import type { PageApi } from '../pageApi.ts'

/** Weekdays 08:00 to 18:00, two bays and two people that do everything. Invented names throughout. */
export async function setUpQuillhaven(api: PageApi): Promise<void> {
  await api.shop.setUp.mutate({
    name: 'Quillhaven Coatings',
    zone: 'Europe/London',
    currency: 'GBP',
    units: 'metric',
    country: 'GB',
    weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1_080 })),
    bays: [
      { name: 'Bay one', capabilities: ['wet', 'polish', 'clean', 'cure'] },
      { name: 'Bay two', capabilities: ['wet', 'polish', 'clean', 'cure'] },
    ],
    crew: [
      { name: 'Imre Vallis', skills: ['wash', 'polish', 'coat'] },
      { name: 'Oda Penhale', skills: ['wash', 'polish', 'coat'] },
    ],
    starters: true,
  })
}
