/*
 * `npm test`: types, lint, import rules and unused code; unit tests (the domain's also in two far zones); end-to-end
 * tests. What is quick comes first. Every part runs whatever became of the others; the last line is the count.
 */
import { buildStale } from '../main/hosts/build.ts'
import { type Count, check, endToEnd, type Part, tally, unit } from './parts.ts'

const knip = ['node_modules/knip/bin/knip.js', '--no-progress', '--no-config-hints']

const quick: Part[] = [
  { name: 'types', run: ['node_modules/typescript/bin/tsc', '--noEmit'] },
  { name: 'lint', run: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'] },
  {
    name: 'rules',
    run: [
      'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs',
      '--config',
      '.dependency-cruiser.mjs',
      '--output-type',
      'err-long',
    ].concat(['main', 'app', 'tests', 'prisma']),
  },
  { name: 'unused in the product', run: [...knip, '--production'] },
  { name: 'unused', run: knip },
]

/** See tests/domain/cases.ts. */
const again = { LUSTRUM_AGAIN: '1' }

const long: Part[] = [
  unit('unit'),
  unit('unit, domain in New York', ['tests/domain/'], { TZ: 'America/New_York', ...again }),
  unit('unit, domain in Auckland', ['tests/domain/'], { TZ: 'Pacific/Auckland', ...again }),
  endToEnd('end-to-end'),
]

await buildStale()
const counts: Count[] = await Promise.all(quick.map(check))
for (const part of long) counts.push(await check(part))
tally(counts)
