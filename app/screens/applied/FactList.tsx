import type { ReactNode } from 'react'
import type { AppliedView } from '../../../main/api/views.ts'
import { say, sayKept } from '../../../main/domain/language/index.ts'
import { useShop } from '../../data/shop.ts'
import { degrees } from '../../parts/degrees.ts'
import { Fact } from '../../parts/Facts.tsx'
import { durationWords, fullWords } from '../../parts/time.ts'

type Facts = AppliedView['facts']

/** The car, its owner and what was done against a figure, with the reasons. */
export function FactList({ facts, zone }: { facts: Facts; zone: string }) {
  return (
    <dl>
      <Fact name={say('Vehicle')}>
        {facts.plate}, {facts.vehicleWords}
        {facts.vin && say(', VIN {vin}', { vin: facts.vin })}
      </Fact>
      {facts.odometer && <Fact name={say('Odometer')}>{facts.odometer}</Fact>}
      <Fact name={say('Owner')}>{facts.customerName}</Fact>
      <Fact name={say('Treatments')}>{facts.treatments.join(', ')}</Fact>
      {facts.leftAt !== null && <Fact name={say('Handed over')}>{fullWords(facts.leftAt, zone)}</Fact>}
      {facts.heatings.map(words => (
        <Fact key={words} name={say('Heated cure')}>
          {words}
        </Fact>
      ))}
      {facts.overrides.map(words => (
        <Fact key={words} name={say('Reason given')}>
          {words}
        </Fact>
      ))}
    </dl>
  )
}

/** What the shop's own rows say of one layer. */
export function LayerFactList({
  layer,
  zone,
  children,
}: {
  layer: Facts['layers'][number]
  zone: string
  children?: ReactNode
}) {
  const { units } = useShop()
  return (
    <dl>
      <Fact name={say('When')}>
        {say('{startAt} to {endAt}, {bayName}', {
          startAt: fullWords(layer.startAt, zone),
          endAt: fullWords(layer.endAt, zone),
          bayName: layer.bayName,
        })}
      </Fact>
      {children}
      <Fact name={say('Conditions')}>{layer.conditions}</Fact>
      {layer.window && <Fact name={say('Window')}>{layer.window}</Fact>}
      {layer.ageMin !== null && layer.parts && (
        <Fact name={say('Cure age at handover')}>
          {say('{ageMin} at {referenceC}; up to then {measuredMin} measured, {assumedMin} assumed', {
            ageMin: durationWords(layer.ageMin),
            referenceC: degrees(layer.referenceC, units),
            measuredMin: durationWords(Math.round(layer.parts.measuredMin)),
            assumedMin: durationWords(Math.round(layer.parts.assumedMin)),
          })}
        </Fact>
      )}
      <Fact name={say('Rule')}>{layer.rule}</Fact>
    </dl>
  )
}

/** Panels by their surface: "gloss: Bonnet, Roof". */
export function ZoneWords({ zones }: { zones: { name: string; finish: string }[] }) {
  const byFinish = Map.groupBy(zones, zone => zone.finish)
  return (
    <Fact name={say('Panels and zones')}>
      {[...byFinish]
        .map(([finish, of]) => `${sayKept(finish)}: ${of.map(zone => sayKept(zone.name)).join(', ')}`)
        .join('; ')}
    </Fact>
  )
}
