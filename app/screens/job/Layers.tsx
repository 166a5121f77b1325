import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { JobLayerView, JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import { nearWords } from '../../parts/time.ts'
import cure from './Cure.module.css'
import { Heatings } from './Heatings.tsx'

/** The coats one over the other: when each went on, in which window, in what air; and heat where it was given. */
export function Layers({ job }: { job: JobView }) {
  const { data } = useQuery({ ...trpc.cure.job.queryOptions({ id: job.id }), refetchInterval: 60_000 })
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  if (!data || data.layers.length === 0) return null
  return (
    <Card title={say('Layers')}>
      <ol className={cure.layers}>
        {data.layers.map((layer, i) => (
          <li key={layer.position}>
            <Say
              text="<b>{i}. {name}</b> {productName}, {laid}{startAt} to {endAt}"
              values={{
                i: i + 1,
                name: layer.name,
                productName: layer.productName,
                laid: layer.laid ? '' : '≈ ',
                startAt: when(layer.startAt),
                endAt: when(layer.endAt),
              }}
            />
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
        <summary>{say('Which figure rules what')}</summary>
        <ul className={cure.rules}>
          {data.rules.map(words => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </details>
      <Link to="/jobs/$id/applied" params={{ id: job.id }} className={cure.link}>
        {say('Applied record')}
      </Link>
    </Card>
  )
}

function WindowLine({ layer: { window, why, verdict, asks }, job }: { layer: JobLayerView; job: JobView }) {
  if (verdict === null) return null
  if (!window)
    return <p className={pieces.soft}>{say('The coat beneath gives no window for it, or is not on yet.')}</p>
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  const from = window.opensAt === null ? say('never in this cold') : when(window.opensAt)
  const span =
    window.closesAt === null
      ? say('from {from}', { from })
      : say('{from} to {closesAt}', { from, closesAt: when(window.closesAt) })
  return (
    <>
      <p>
        {say('Window {span}:', { span })}{' '}
        <span className={verdict === 'met' ? pieces.kept : pieces.late}>
          {verdict === 'met' ? say('✓ within it') : `⚠ ${verdict}`}
        </span>
        {asks && <> {say('The profile asks: {asks}', { asks })}</>}
      </p>
      <ul className={cure.rules}>
        <li>{say('So that the first and the last panel keep it, laid in the same order.')}</li>
        {why.map(words => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </>
  )
}
