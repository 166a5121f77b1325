import { say } from '../../main/domain/language/index.ts'
/** The screens of the bar, in the order of a shop's day; G and then the key goes there. */
export const screens = [
  { to: '/', label: say('Board'), key: 'b' },
  { to: '/book', label: say('Book'), key: 'k' },
  { to: '/morning', label: say('Morning'), key: 'm' },
  { to: '/close', label: say('Close of day'), key: 'd' },
  { to: '/shelf', label: say('Shelf'), key: 'h' },
  { to: '/money', label: say('Money'), key: 'y' },
  { to: '/conditions', label: say('Conditions'), key: 'o' },
  { to: '/upkeep', label: say('Upkeep'), key: 'u' },
  { to: '/customers', label: say('Customers'), key: 'c' },
  { to: '/settings', label: say('Settings'), key: 's' },
] as const
