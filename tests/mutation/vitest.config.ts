import base from '../vitest.config.ts'

/** The tests a mutation run may use: those of the mutated area, so that a changed line is not tried against the whole suite. */
const include = (process.env.MUTATION_TESTS ?? '').split(',').filter(Boolean)

export default { ...base, test: { ...base.test, include } }
