import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { BayNow } from './BayNow.tsx'
import styles from './Conditions.module.css'
import { ImportFile } from './ImportFile.tsx'
import { NoticePermission } from './NoticePermission.tsx'
import { Readings } from './Readings.tsx'
import { Sensors } from './Sensors.tsx'
import { TypeReading } from './TypeReading.tsx'
import { UsualForm } from './UsualForm.tsx'

/** The weather in the bays: what the cure clocks run on, and what a coat may be laid in. */
export function Conditions() {
  const query = useQuery({ ...trpc.readings.now.queryOptions(), refetchInterval: 60_000 })
  const [chosen, setChosen] = useState<string | null>(null)
  if (query.error) return <Refused of={query.error} />
  const view = query.data
  if (!view) return <p className={pieces.soft}>{say('Reading the bays …')}</p>
  const bay = view.bays.find(each => each.bayId === chosen) ?? view.bays[0]
  return (
    <div className={pieces.column}>
      <header className={pieces.heading}>
        <h1>{say('Conditions')}</h1>
        <span className={pieces.soft}>
          {say(
            'A coat cures by the temperature it lives through: cold lengthens it every time. The clocks on the board follow what is read here.',
          )}
        </span>
      </header>
      <NoticePermission />
      {!bay ? (
        <p className={pieces.soft}>
          {say('There is no bay yet: add one in the settings, then its weather stands here.')}
        </p>
      ) : (
        <>
          <section className={styles.bays} aria-label={say('Bays now')}>
            {view.bays.map(each => (
              <BayNow
                key={each.bayId}
                bay={each}
                view={view}
                chosen={each.bayId === bay.bayId}
                onChoose={() => setChosen(each.bayId)}
              />
            ))}
          </section>
          <div className={styles.columns} key={bay.bayId}>
            <div className={pieces.column}>
              <Readings bay={bay} view={view} />
              <ImportFile bay={bay} view={view} />
            </div>
            <div className={pieces.column}>
              <TypeReading bay={bay} nowAt={view.nowAt} />
              <UsualForm bay={bay} />
              <Sensors bay={bay} view={view} />
            </div>
          </div>
        </>
      )}
    </div>
  )
}
