import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { RowButton } from '../../parts/RowButton.tsx'
import { nearWords } from '../../parts/time.ts'

/** The last files taken into a bay, each to be taken back whole: the wrong bay, or the wrong unit. */
export function TakenFiles({ bay, view }: { bay: BayConditionsView; view: ConditionsView }) {
  const { save, busy, error } = useSaving(trpc.readings.takeBack.mutationOptions())
  if (bay.imports.length === 0) return null
  return (
    <>
      <h3>{say('Files taken in')}</h3>
      <ul aria-label={say('Files taken into {bayName}', { bayName: bay.bayName })}>
        {bay.imports.map(({ id, fileName, importedAt, count }) => (
          <li key={id}>
            {say('{fileName}, {count} readings, {importedAt}', {
              fileName,
              count: count.toLocaleString(localeNow()),
              importedAt: nearWords(importedAt, view.zone, view.nowAt),
            })}{' '}
            <RowButton
              does={say('Take back')}
              of={fileName}
              size="compact-xs"
              disabled={busy}
              onClick={() => save({ id })}
            />
          </li>
        ))}
      </ul>
      <Refused of={error} />
    </>
  )
}
