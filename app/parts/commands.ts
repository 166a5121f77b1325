import { say } from '../../main/domain/language/index.ts'
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
  words: say('colours theme light dark night'),
  keys: [],
  run: context => context.setScheme(value),
})

export const commands: Command[] = [
  ...screens.map(({ to, label, key }) =>
    go(`screen-${key}`, say('Go to {label}', { label }), to, say('screen open show'), ['g', key]),
  ),
  go('new-customer', say('Add a customer'), '/customers/new', say('new client caller person')),
  go('verify', say('Check a certificate'), '/verify', say('verify genuine signature code applied record')),
  go(
    'shelf-orders',
    say('Shelf: orders'),
    '/shelf/orders',
    say('purchase supplier delivery receive chase late'),
  ),
  go('shelf-suppliers', say('Shelf: suppliers'), '/shelf/suppliers', say('buy delivery lead time carriage')),
  go('new-supplier', say('Add a supplier'), '/shelf/suppliers/new', say('new buy')),
  go(
    'shelf-safety',
    say('Shelf: chemical safety'),
    '/shelf/safety',
    say('hazard data sheet flammable storage ghs'),
  ),
  go('shelf-value', say('Shelf: value'), '/shelf/value', say('cost stock worth write-off fifo average')),
  go(
    'shelf-rules',
    say('Shelf: rules and mail'),
    '/shelf/rules',
    say('service level e-mail server smtp limit'),
  ),
  go(
    'upkeep-reminders',
    say('Upkeep: the morning’s reminders'),
    '/upkeep/reminders',
    say('batch mail review approve outbox'),
  ),
  go('relay', say('Re-lay the floor'), '/plan/relay', say('day plan better optimise optimize mend all')),
  go(
    'what-if',
    say('What if: a bay closed, somebody away, a rush car'),
    '/plan/what-if',
    say('day plan suppose sick'),
  ),
  go(
    'bay-use',
    say('Use of the bays'),
    '/plan/use',
    say('utilisation utilization idle blocked hands-on trend'),
  ),
  go(
    'upkeep-calls',
    say('Upkeep: calls, texts and letters'),
    '/upkeep/calls',
    say('phone script sms print list'),
  ),
  go('upkeep-results', say('Upkeep: results'), '/upkeep/results', say('reminded booked came share')),
  go(
    'upkeep-templates',
    say('Upkeep: templates'),
    '/upkeep/templates',
    say('words letters languages merge fields'),
  ),
  go(
    'upkeep-rules',
    say('Upkeep: rules'),
    '/upkeep/rules',
    say('quiet hours limit tries automatic exposure'),
  ),
  go('upkeep-feeds', say('Upkeep: calendar feeds'), '/upkeep/feeds', say('ical subscribe secret link')),
  go(
    'settings-shop',
    say('Settings: the shop'),
    '/settings/shop',
    say('name zone currency units grid handover'),
  ),
  go(
    'settings-hours',
    say('Settings: hours and exceptions'),
    '/settings/hours',
    say('opening holiday closed week'),
  ),
  go('settings-bays', say('Settings: bays and closures'), '/settings/bays', say('place capability repair')),
  go(
    'settings-crew',
    say('Settings: crew and absences'),
    '/settings/crew',
    say('people staff holiday ill skills'),
  ),
  go(
    'settings-treatments',
    say('Settings: treatments'),
    '/settings/treatments',
    say('steps prices minutes sell'),
  ),
  go(
    'settings-products',
    say('Settings: products and cure profiles'),
    '/settings/products',
    say('coating topper data sheet'),
  ),
  scheme('light', say('Light colours')),
  scheme('dark', say('Dark colours')),
  scheme('auto', say('Same colours as the computer')),
  {
    name: 'keys',
    label: say('Show the keys'),
    words: say('keyboard help shortcuts'),
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
