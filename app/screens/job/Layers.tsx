import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { JobLayerView, JobView } from '../../../main/api/views.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { nearWords } from '../../parts/time.ts'
import cure from './Cure.module.css'
import { Heatings } from './Heatings.tsx'

/** The coats one over the other: when each went on, in which window, in what air; and heat where it was given. */
export function Layers({ job }: { job: JobView }) {
  const { data } = useQuery({ ...trpc.cure.job.queryOptions({ id: job.id }), refetchInterval: 60_000 })
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  if (!data || data.layers.length === 0) return null
  return (
    <Card title="Layers">
      <ol className={cure.layers}>
        {data.layers.map((layer, i) => (
          <li key={layer.position}>
            <b>
              {i + 1}. {layer.name}
            </b>{' '}
            {layer.productName}, {layer.laid ? '' : '≈ '}
            {when(layer.startAt)} to {when(layer.endAt)}
            <WindowLine layer={layer} job={job} />
            {layer.conditions && <p className={pieces.soft}>{layer.conditions}</p>}
            {layer.air.map(words => (
              <p key={words} className={pieces.late}>
                ⚠ {words}
              </p>
            ))}
          </li>
        ))}
      </ol>
      {(data.canHeat || data.heatings.length > 0) && <Heatings job={job} cure={data} />}
      <details>
        <summary>Which figure rules what</summary>
        <ul className={cure.rules}>
          {data.rules.map(words => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </details>
      <Link to="/jobs/$id/applied" params={{ id: job.id }} className={cure.link}>
        Applied record
      </Link>
    </Card>
  )
}

function WindowLine({ layer: { window, why, verdict, asks }, job }: { layer: JobLayerView; job: JobView }) {
  if (verdict === null) return null
  if (!window)
    return <p className={pieces.soft}>The coat beneath names no window for it, or is not laid yet.</p>
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  const from = window.opensAt === null ? 'never in this cold' : when(window.opensAt)
  const span = window.closesAt === null ? `from ${from}` : `${from} to ${when(window.closesAt)}`
  return (
    <>
      <p>
        Window {span}:{' '}
        <span className={verdict === 'met' ? pieces.kept : pieces.late}>
          {verdict === 'met' ? '✓ within it' : `⚠ ${verdict}`}
        </span>
        {asks && <> The profile asks: {asks}</>}
      </p>
      <ul className={cure.rules}>
        <li>So that the first and the last panel keep it, laid in the same order.</li>
        {why.map(words => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </>
  )
}
