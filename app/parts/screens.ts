/** The screens of the bar, in the order of a shop's day; G and then the key goes there. */
export const screens = [
  { to: '/', label: 'Board', key: 'b' },
  { to: '/book', label: 'Book', key: 'k' },
  { to: '/morning', label: 'Morning', key: 'm' },
  { to: '/close', label: 'Close of day', key: 'd' },
  { to: '/shelf', label: 'Shelf', key: 'h' },
  { to: '/money', label: 'Money', key: 'y' },
  { to: '/conditions', label: 'Conditions', key: 'o' },
  { to: '/upkeep', label: 'Upkeep', key: 'u' },
  { to: '/customers', label: 'Customers', key: 'c' },
  { to: '/settings', label: 'Settings', key: 's' },
] as const
