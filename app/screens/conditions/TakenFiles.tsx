import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
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
      <h3>Files taken in</h3>
      <ul aria-label={`Files taken into ${bay.bayName}`}>
        {bay.imports.map(({ id, fileName, importedAt, count }) => (
          <li key={id}>
            {fileName}, {count.toLocaleString('en-GB')} readings,{' '}
            {nearWords(importedAt, view.zone, view.nowAt)}{' '}
            <RowButton
              does="Take back"
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
