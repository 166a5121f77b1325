import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { SafetyWarningsView, ShelfListItem } from '../../../../main/api/views.ts'
import { showVolume } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { knownPictograms } from '../../../parts/shelf/HazardMark.tsx'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import styles from '../Shelf.module.css'
import { FlammableBar } from './FlammableBar.tsx'

/** What stands beside what it must not stand beside, how much burns, and whose data sheet is missing. */
export function Safety() {
  const warnings = useQuery(trpc.safety.warnings.queryOptions()).data
  const list = useQuery(trpc.shelf.list.queryOptions()).data
  if (!warnings || !list) return <p className={styles.soft}>Looking along the shelf …</p>
  const names = new Map(list.map(item => [item.id, item.name]))
  return (
    <>
      <div className={styles.heading}>
        <h1>Chemical safety</h1>
      </div>
      <p className={styles.soft}>{warnings.caution}</p>
      <div className={styles.two}>
        <div className={styles.stack}>
          <div className={styles.card}>
            <h2>Stored together</h2>
            {warnings.storage.length === 0 ? (
              <p className={styles.kept}>
                ✓ Nothing stands beside what it must be kept apart from, as far as the groups entered tell.
              </p>
            ) : (
              <ul className={styles.plain}>
                {warnings.storage.map(each => (
                  <li key={each.words} className={styles.late}>
                    ⚠ {each.words} <Products ids={each.productIds} names={names} />
                  </li>
                ))}
              </ul>
            )}
          </div>
          <Flammable flammable={warnings.flammable} />
          <div className={styles.card}>
            <h2>Data sheets</h2>
            {warnings.sheets.length === 0 ? (
              <p className={styles.kept}>✓ Every product on the shelf has a sheet of the last three years.</p>
            ) : (
              <ul className={styles.plain}>
                {warnings.sheets.map(each => (
                  <li key={each.productId}>
                    <Link to="/shelf/$section/$id" params={{ section: 'product', id: each.productId }}>
                      {each.productName}
                    </Link>
                    : {each.words}
                  </li>
                ))}
              </ul>
            )}
          </div>
        </div>
        <Hazards list={list} />
      </div>
    </>
  )
}

function Products({ ids, names }: { ids: string[]; names: Map<string, string> }) {
  return (
    <small>
      {ids.map((id, i) => (
        <span key={id}>
          {i > 0 && ', '}
          <Link to="/shelf/$section/$id" params={{ section: 'product', id }}>
            {names.get(id) ?? 'a product'}
          </Link>
        </span>
      ))}
    </small>
  )
}

function Flammable({ flammable }: { flammable: SafetyWarningsView['flammable'] }) {
  const { units } = useShop()
  const show = (volumeMl: number) => showVolume(volumeMl, units, navigator.language)
  const { byCode } = flammable
  return (
    <div className={styles.card}>
      <h2>Flammable liquid</h2>
      <FlammableBar flammable={flammable} show={show} />
      <p className={flammable.state === 'over' ? styles.late : undefined}>
        {flammable.state === 'over' && '⚠ '}
        {flammable.words}
      </p>
      <dl>
        <dt>H224, extremely flammable</dt>
        <dd>{show(byCode.H224)}</dd>
        <dt>H225, highly flammable</dt>
        <dd>{show(byCode.H225)}</dd>
        <dt>H226, flammable</dt>
        <dd>{show(byCode.H226)}</dd>
        {flammable.aerosolMl > 0 && (
          <>
            <dt>Aerosols</dt>
            <dd>{show(flammable.aerosolMl)}</dd>
          </>
        )}
        {flammable.silentMl > 0 && (
          <>
            <dt>Liquids whose sheet says nothing</dt>
            <dd>{show(flammable.silentMl)}</dd>
          </>
        )}
      </dl>
      <Link to="/shelf/$section" params={{ section: 'rules' }}>
        {flammable.limitMl === null ? 'Enter the limit of the local code' : 'Change the limit'}
      </Link>
    </div>
  )
}

function Hazards({ list }: { list: ShelfListItem[] }) {
  return (
    <div className={styles.card}>
      <h2>Product by product</h2>
      <table className={styles.table}>
        <tbody>
          {list.map(item => (
            <tr key={item.id}>
              <td>
                <Link to="/shelf/$section/$id" params={{ section: 'product', id: item.id }}>
                  {item.name}
                </Link>
                <small>{item.place}</small>
              </td>
              <td>
                <Pictograms codes={knownPictograms(item.pictograms)} />
              </td>
              <td>{item.signalWord ?? <span className={styles.soft}>no signal word known</span>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
