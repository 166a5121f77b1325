import { screens } from './screens.ts'

export type Scheme = 'auto' | 'light' | 'dark'

/** What a command may do. */
export interface CommandContext {
  go(to: string): void
  setScheme(scheme: Scheme): void
  showKeys(): void
}

/** One thing the desk can be told to do: the palette, the keys and the help all read the same list. */
export interface Command {
  name: string
  label: string
  /** More words it is found by. */
  words: string
  /** The keys for it one after the other; empty: only from the palette. */
  keys: string[]
  run(context: CommandContext): void
}

const go = (name: string, label: string, to: string, words: string, keys: string[] = []): Command => ({
  name,
  label,
  words,
  keys,
  run: context => context.go(to),
})

const scheme = (value: Scheme, label: string): Command => ({
  name: `scheme-${value}`,
  label,
  words: 'colours theme light dark night',
  keys: [],
  run: context => context.setScheme(value),
})

export const commands: Command[] = [
  ...screens.map(({ to, label, key }) =>
    go(`screen-${key}`, `Go to ${label}`, to, 'screen open show', ['g', key]),
  ),
  go('new-customer', 'Add a customer', '/customers/new', 'new client caller person'),
  go('verify', 'Check a certificate', '/verify', 'verify genuine signature code applied record'),
  go('shelf-orders', 'Shelf: orders', '/shelf/orders', 'purchase supplier delivery receive chase late'),
  go('shelf-suppliers', 'Shelf: suppliers', '/shelf/suppliers', 'buy delivery lead time carriage'),
  go('new-supplier', 'Add a supplier', '/shelf/suppliers/new', 'new buy'),
  go('shelf-safety', 'Shelf: chemical safety', '/shelf/safety', 'hazard data sheet flammable storage ghs'),
  go('shelf-value', 'Shelf: value', '/shelf/value', 'cost stock worth write-off fifo average'),
  go('shelf-rules', 'Shelf: rules and mail', '/shelf/rules', 'service level e-mail server smtp limit'),
  go(
    'upkeep-reminders',
    'Upkeep: the morning’s reminders',
    '/upkeep/reminders',
    'batch mail review approve outbox',
  ),
  go('relay', 'Re-lay the floor', '/plan/relay', 'day plan better optimise optimize mend all'),
  go('what-if', 'What if: a bay closed, somebody away, a rush car', '/plan/what-if', 'day plan suppose sick'),
  go('bay-use', 'Use of the bays', '/plan/use', 'utilisation utilization idle blocked hands-on trend'),
  go('upkeep-calls', 'Upkeep: calls, texts and letters', '/upkeep/calls', 'phone script sms print list'),
  go('upkeep-results', 'Upkeep: results', '/upkeep/results', 'reminded booked came share'),
  go('upkeep-templates', 'Upkeep: templates', '/upkeep/templates', 'words letters languages merge fields'),
  go('upkeep-rules', 'Upkeep: rules', '/upkeep/rules', 'quiet hours limit tries automatic exposure'),
  go('upkeep-feeds', 'Upkeep: calendar feeds', '/upkeep/feeds', 'ical subscribe secret link'),
  go('settings-shop', 'Settings: the shop', '/settings/shop', 'name zone currency units grid handover'),
  go('settings-hours', 'Settings: hours and exceptions', '/settings/hours', 'opening holiday closed week'),
  go('settings-bays', 'Settings: bays and closures', '/settings/bays', 'place capability repair'),
  go('settings-crew', 'Settings: crew and absences', '/settings/crew', 'people staff holiday ill skills'),
  go('settings-treatments', 'Settings: treatments', '/settings/treatments', 'steps prices minutes sell'),
  go(
    'settings-products',
    'Settings: products and cure profiles',
    '/settings/products',
    'coating topper data sheet',
  ),
  scheme('light', 'Light colours'),
  scheme('dark', 'Dark colours'),
  scheme('auto', 'Colours as the computer has them'),
  {
    name: 'keys',
    label: 'Show the keys',
    words: 'keyboard help shortcuts',
    keys: ['?'],
    run: context => context.showKeys(),
  },
]

/** The commands that hold every word of the text; all of them without text. */
export function findCommands(text: string): Command[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean)
  return commands.filter(command => {
    const all = `${command.label} ${command.words}`.toLowerCase()
    return words.every(word => all.includes(word))
  })
}
