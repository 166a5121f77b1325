/** What the kinds of things in the history are called, and where one of them is shown. */
const called: Readonly<Record<string, string>> = {
  vehicle: 'car',
  stock: 'shelf',
  safety: 'safety of',
  crew: 'crew member',
  lendable: 'thing to lend',
  absence: 'absence',
  closure: 'bay closure',
  mail: 'mail settings',
  feed: 'calendar feed',
  backups: 'backups',
  'product life': 'life of',
  exposure: 'use of a car',
}

export const entityWords = (entity: string) => called[entity] ?? entity

/** The address of the page that shows it; null where none does. */
export function pageOf(entity: string, id: string) {
  if (entity === 'customer') return { to: '/customers/$id', params: { id } } as const
  if (entity === 'vehicle') return { to: '/cars/$id', params: { id } } as const
  if (entity === 'job') return { to: '/jobs/$id', params: { id } } as const
  if (entity === 'stock' || entity === 'product' || entity === 'safety')
    return { to: '/shelf/$section/$id', params: { section: 'product', id } } as const
  const section = { bay: 'bays', crew: 'crew', lendable: 'lending', treatment: 'treatments' }[entity]
  return section ? ({ to: '/settings/$section/$id', params: { section, id } } as const) : null
}
