import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { listAt, objectAt, wholeAt } from '../fields.ts'
import type { JobShop } from './types.ts'

/** The most operations, and the most minutes in all: the solver keeps a number for each minute. */
const mostOperations = 2500
const mostMinutes = 200_000

/**
 * One job shop of a file of instances: `instances.NAME.jobs` is a list of chains of `[machine, minutes]`. Throws a
 * Refusal that names the first field that will not do.
 */
export function readShop(json: unknown, name: string): JobShop {
  const instances = objectAt(objectAt(json, 'file').instances, 'instances')
  if (!(name in instances))
    refuse(
      'id-unknown',
      { '--instance': name },
      say('no instance is called {name}; there is {instances}', {
        name,
        instances: Object.keys(instances).join(', '),
      }),
    )
  const field = `instances.${name}`
  const shop = listAt(objectAt(instances[name], field).jobs, `${field}.jobs`, (job, path) => {
    const chain = listAt(job, path, (operation, at): readonly [number, number] => {
      const pair = listAt(operation, at, item => item)
      return [wholeAt(pair[0], `${at}.0`, 0), wholeAt(pair[1], `${at}.1`, 1, mostMinutes)]
    })
    if (chain.length === 0)
      refuse('steps-empty', { [path]: [] }, say('the list is empty; give at least one.'))
    return chain
  })
  const operations = shop.flat()
  const minutes = operations.reduce((sum, operation) => sum + operation[1], 0)
  if (shop.length === 0 || operations.length > mostOperations || minutes > mostMinutes)
    refuse(
      'shop-size',
      { [`${field}.jobs`]: operations.length },
      say(
        'has {operations} operations of {minutes} minutes in all; give 1 to {mostOperations} and at most {mostMinutes}.',
        { operations: operations.length, minutes, mostOperations, mostMinutes },
      ),
    )
  return shop
}
