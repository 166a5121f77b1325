/** What a certificate states of a page, in the words of the moment. */

import { durationWords } from '../../domain/calendar/index.ts'
import { decimalNow, say } from '../../domain/language/index.ts'
import { momentForGood, type StatementSection } from '../../domain/proof/index.ts'
import { panelNames } from '../../domain/shop/index.ts'
import type { AppliedFacts } from './facts.ts'
import type { AppliedDraft } from './inputs.ts'

interface Stated {
  readonly number: number
  readonly jobNumber: number
  readonly signedBy: string
  readonly signedAt: number
  readonly facts: AppliedFacts
  readonly draft: AppliedDraft
}

/** What the certificate states. The owner is not in it: it goes with the car. */
export function statementNow(page: Stated, zone: string): StatementSection[] {
  const { facts, draft } = page
  const when = (at: number) => momentForGood(at, zone)
  return [
    {
      title: say('Car and record'),
      facts: [
        [say('Shop'), facts.shopName],
        [
          say('Job and page'),
          say('{jobNumber}, page {number}', { jobNumber: page.jobNumber, number: page.number }),
        ],
        [say('Car'), facts.vehicleWords],
        [say('Identification number'), facts.vin ?? say('not on file')],
        // Pages signed before it was on them have none, and state what they stated.
        [say('Odometer'), facts.odometer ?? ''],
        [say('Treatments'), facts.treatments.join('; ')],
        [say('Handed over'), facts.leftAt === null ? '' : when(facts.leftAt)],
        [say('Signed'), `${page.signedBy}, ${when(page.signedAt)}`],
        [say('Note'), draft.note],
      ],
    },
    ...facts.layers.map((layer, i) => {
      const own = draft.layers.find(({ position }) => position === layer.position)
      const panels =
        own?.zones.map(({ name, finish }) => `${zoneWords(name)} (${say(finish)})`).join(', ') ?? ''
      return {
        title: `${i + 1}. ${layer.name}`,
        facts: [
          [say('Product'), layer.productName],
          [say('Lot or batch'), own?.lot ?? ''],
          [
            say('Laid'),
            say('{startAt} to {endAt}', { startAt: when(layer.startAt), endAt: when(layer.endAt) }),
          ],
          [say('Laid by'), own?.who ?? ''],
          [say('On'), panels],
          [say('Conditions'), layer.conditions],
          [say('Window of the coat beneath'), layer.window ?? ''],
          [
            say('Cure at handover'),
            layer.ageMin === null
              ? ''
              : say('{ageMin} at {referenceC} °C', {
                  ageMin: durationWords(layer.ageMin),
                  referenceC: decimalNow(layer.referenceC),
                }),
          ],
        ] as const,
      }
    }),
  ]
}

const knownZones: ReadonlySet<string> = new Set([...panelNames, 'Wheels', 'Glass'])

/** A zone by its name; one that somebody typed as it was typed. */
const zoneWords = (name: string) => (knownZones.has(name) ? say(name) : name)
