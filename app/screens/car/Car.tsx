import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { HistoryCard } from '../../parts/HistoryLines.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import { useActs } from '../upkeep/useActs.tsx'
import { AwayAndSold } from './AwayAndSold.tsx'
import { CarActs, type CarForm } from './CarActs.tsx'
import { Exposure } from './Exposure.tsx'
import { Life } from './Life.tsx'
import { LifeCard } from './LifeCard.tsx'
import { Plans } from './Plans.tsx'
import { Timeline } from './Timeline.tsx'

/** One car over the years: what lies on it, what was seen of it, when it comes next and why. */
export function Car() {
  const { id } = useParams({ from: '/cars/$id' })
  const query = useQuery(trpc.upkeep.car.queryOptions({ vehicleId: id }))
  const acts = useActs()
  const [form, setForm] = useState<CarForm | null>(null)
  const car = query.data
  if (!car)
    return <Lookup error={query.error} what={say('the car')} to="/customers" label={say('All customers')} />
  return (
    <div className={pieces.column}>
      <div className={pieces.heading}>
        <h1>{car.plate || say('Car without a plate')}</h1>
        <p className={pieces.soft}>
          {car.vehicleWords} ·{' '}
          <Link to="/customers/$id" params={{ id: car.customerId }}>
            {car.customerName}
          </Link>{' '}
          · <Link to="/upkeep">{say('all upkeep')}</Link>
        </p>
        {car.soldOn && (
          <b className={pieces.late}>{say('sold on {soldOn}', { soldOn: fullDateWords(car.soldOn) })}</b>
        )}
        <div className={pieces.end}>{form === null && <CarActs car={car} onForm={setForm} />}</div>
      </div>
      {acts.bar}
      <LifeCard car={car} acts={acts} form={form} onClose={() => setForm(null)} />
      <div className={pieces.two}>
        <div className={pieces.column}>
          <Plans car={car} acts={acts} />
          <Exposure key={car.vehicleId} car={car} />
          <AwayAndSold car={car} acts={acts} />
        </div>
        <div className={pieces.column}>
          <Life car={car} />
          <Timeline car={car} acts={acts} />
          <HistoryCard entities={['vehicle', 'exposure']} id={car.vehicleId} />
        </div>
      </div>
    </div>
  )
}
