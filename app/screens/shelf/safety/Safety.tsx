import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { SafetyWarningsView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Facts } from '../../../parts/Facts.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { knownPictograms } from '../../../parts/shelf/HazardMark.tsx'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import { Table } from '../../../parts/Table.tsx'
import { Waiting } from '../../../parts/Waiting.tsx'
import { ProductLink } from '../ProductLink.tsx'
import { FlammableBar } from './FlammableBar.tsx'
import { WasteRules } from './WasteRules.tsx'

/** What stands beside what it must not stand beside, how much burns, and whose data sheet is missing. */
export function Safety() {
  const { data: warnings, error } = useQuery(trpc.safety.warnings.queryOptions())
  const list = useQuery(trpc.shelf.list.queryOptions()).data
  if (!warnings || !list) return <Waiting error={error} words={say('Checking the shelf')} />
  const nameOf = (id: string) => list.find(item => item.id === id)?.name ?? say('a product')
  return (
    <>
      <ScreenTitle title={say('Chemical safety')} />
      <p className={pieces.soft}>{warnings.caution}</p>
      <div className={pieces.two}>
        <div className={pieces.column}>
          <Card title={say('Stored together')}>
            {warnings.storage.length === 0 && (
              <p className={pieces.kept}>
                {say(
                  '✓ Nothing stands beside what it must be kept apart from, as far as the groups entered tell.',
                )}
              </p>
            )}
            <Storage storage={warnings.storage} nameOf={nameOf} />
          </Card>
          <Flammable flammable={warnings.flammable} />
          <WasteRules />
          <Card title={say('Data sheets')}>
            {warnings.sheets.length === 0 && (
              <p className={pieces.kept}>
                {say('✓ Every product on the shelf has a sheet of the last three years.')}
              </p>
            )}
            <ul className={pieces.plain}>
              {warnings.sheets.map(({ productId, productName, words }) => (
                <li key={productId}>
                  <ProductLink id={productId} name={productName} />: {words}
                </li>
              ))}
            </ul>
          </Card>
        </div>
        <Card title={say('Product by product')}>
          <Table
            rows={list}
            keyOf={item => item.id}
            columns={[
              {
                cell: item => <ProductLink id={item.id} name={item.name} />,
                small: item => item.place,
              },
              { cell: item => <Pictograms codes={knownPictograms(item.pictograms)} /> },
              {
                cell: item =>
                  item.signalWord ? (
                    say(item.signalWord)
                  ) : (
                    <span className={pieces.soft}>{say('no signal word known')}</span>
                  ),
              },
            ]}
          />
        </Card>
      </div>
    </>
  )
}

function Flammable({ flammable }: { flammable: SafetyWarningsView['flammable'] }) {
  const show = (volumeMl: number) => amountText(volumeMl, 'ml')
  const { byCode, combustibleMl, state, words, aerosolMl, silentMl, limitMl } = flammable
  return (
    <Card title={say('Flammable liquid')}>
      <FlammableBar flammable={flammable} show={show} />
      <p className={state === 'over' ? pieces.late : undefined}>
        {state === 'over' && '⚠ '}
        {words}
      </p>
      <Facts
        of={{
          [say('H224, extremely flammable')]: show(byCode.H224),
          [say('H225, highly flammable')]: show(byCode.H225),
          [say('H226, flammable')]: show(byCode.H226),
          [say('H227, combustible')]:
            byCode.H227 > 0 && `${show(byCode.H227)}${combustibleMl > 0 ? say(', not counted') : ''}`,
          [say('Aerosols')]: aerosolMl > 0 && show(aerosolMl),
          [say('Liquids whose sheet says nothing')]: silentMl > 0 && show(silentMl),
        }}
      />
      <Link to="/shelf/$section" params={{ section: 'rules' }}>
        {limitMl === null ? say('Enter the limit of the local code') : say('Change the limit')}
      </Link>
    </Card>
  )
}

interface StorageProps {
  storage: SafetyWarningsView['storage']
  nameOf(id: string): string
}

/** What must be kept apart, pair by pair; those of which nobody knows are one line. */
function Storage({ storage, nameOf }: StorageProps) {
  const unknown = storage.filter(({ productIds }) => productIds.length === 1)
  const together = {
    words: say(
      'Nobody has entered how to store these. Keep each apart until its data sheet or the supplier says:',
    ),
    productIds: unknown.flatMap(({ productIds }) => productIds),
  }
  const lines = unknown.length > 1 ? [...storage.filter(each => !unknown.includes(each)), together] : storage
  return (
    <ul className={pieces.plain}>
      {lines.map(({ words, productIds }) => (
        <li key={words} className={pieces.late}>
          ⚠ {words}{' '}
          <small>
            {productIds.map((id, i) => (
              <span key={id}>
                {i > 0 && ', '}
                <ProductLink id={id} name={nameOf(id)} />
              </span>
            ))}
          </small>
        </li>
      ))}
    </ul>
  )
}
