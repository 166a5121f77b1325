import type { ReactNode } from 'react'
import type { AppliedView } from '../../../main/api/views.ts'
import { useShop } from '../../data/shop.ts'
import { degrees } from '../../parts/degrees.ts'
import { Fact } from '../../parts/Facts.tsx'
import { durationWords, fullWords } from '../../parts/time.ts'

type Facts = AppliedView['facts']

/** The car, its owner and what was done against a figure, with the reasons. */
export function FactList({ facts, zone }: { facts: Facts; zone: string }) {
  return (
    <dl>
      <Fact name="Vehicle">
        {facts.plate}, {facts.vehicleWords}
        {facts.vin && `, VIN ${facts.vin}`}
      </Fact>
      <Fact name="Owner">{facts.customerName}</Fact>
      <Fact name="Treatments">{facts.treatments.join(', ')}</Fact>
      {facts.leftAt !== null && <Fact name="Handed over">{fullWords(facts.leftAt, zone)}</Fact>}
      {facts.heatings.map(words => (
        <Fact key={words} name="Heated cure">
          {words}
        </Fact>
      ))}
      {facts.overrides.map(words => (
        <Fact key={words} name="Reason given">
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
      <Fact name="When">
        {fullWords(layer.startAt, zone)} to {fullWords(layer.endAt, zone)}, {layer.bayName}
      </Fact>
      {children}
      <Fact name="Conditions">{layer.conditions}</Fact>
      {layer.window && <Fact name="Window">{layer.window}</Fact>}
      {layer.ageMin !== null && layer.parts && (
        <Fact name="Cure age at handover">
          {durationWords(layer.ageMin)} at {degrees(layer.referenceC, units)}; of the time until then{' '}
          {durationWords(Math.round(layer.parts.measuredMin))} measured,{' '}
          {durationWords(Math.round(layer.parts.assumedMin))} assumed
        </Fact>
      )}
      <Fact name="Rule">{layer.rule}</Fact>
    </dl>
  )
}

/** Panels by their surface: "gloss: Bonnet, Roof". */
export function ZoneWords({ zones }: { zones: { name: string; finish: string }[] }) {
  const byFinish = Map.groupBy(zones, zone => zone.finish)
  return (
    <Fact name="Panels and zones">
      {[...byFinish].map(([finish, of]) => `${finish}: ${of.map(zone => zone.name).join(', ')}`).join('; ')}
    </Fact>
  )
}
