import { say } from '../../main/domain/language/index.ts'

/** What the kinds of things in the history are called, and where one of them is shown. */
const called: Readonly<Record<string, string>> = {
  bay: say('bay'),
  customer: say('customer'),
  floor: say('floor||history'),
  hours: say('hours||history'),
  import: say('import||history'),
  inspection: say('inspection'),
  job: say('job'),
  message: say('message||history'),
  'money rules': say('money rules'),
  order: say('order||history'),
  papers: say('papers'),
  product: say('product'),
  shop: say('shop'),
  supplier: say('supplier'),
  template: say('template'),
  treatment: say('treatment'),
  'upkeep settings': say('upkeep settings'),
  'waste rule': say('waste rule'),
  vehicle: say('car'),
  stock: say('shelf'),
  safety: say('safety of'),
  crew: say('crew member'),
  lendable: say('thing to lend'),
  absence: say('absence'),
  closure: say('bay closure'),
  mail: say('mail settings'),
  feed: say('calendar feed'),
  backups: say('backups'),
  'product life': say('life of'),
  exposure: say('use of a car'),
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
