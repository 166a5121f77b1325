import * as imported from 'rrule'

/**
 * The `rrule` package under one name. Node loads its CommonJS build, whose exports sit under `default`; a bundler
 * loads its module build, whose exports stand side by side.
 */
const library = 'RRule' in imported ? imported : (imported as { default: typeof import('rrule') }).default

export const RRule: typeof import('rrule').RRule = library.RRule
