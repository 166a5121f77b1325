import { Button, Group, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Defect, IntakeDraft, IntakeView } from '../../../../main/api/views.ts'
import { defectWords, kindWords, severityText } from '../../../../main/domain/intake/index.ts'
import {
  bodyShapes,
  type DefectKind,
  defectKinds,
  type Severity,
  severities,
} from '../../../../main/domain/intake/words.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import type { PanelName } from '../../../../main/domain/shop/index.ts'
import { Card } from '../../../parts/Card.tsx'
import { Chip } from '../../../parts/Chip.tsx'
import pieces from '../../../parts/pieces.module.css'
import styles from '../Intake.module.css'
import { severityWords } from '../words.ts'
import { CarDrawing } from './CarDrawing.tsx'

interface Props {
  draft: IntakeDraft
  finishes: IntakeView['facts']['finishes']
  photos: IntakeView['photos']
  change(part: Partial<IntakeDraft>): void
  error?: string | undefined
}

const most = { x: 1000, y: 560 }
const within = (value: number, limit: number) => Math.min(limit, Math.max(0, value))

/** What is on the car already, marked on its drawing and listed in words. */
export function MarksPart({ draft, finishes, photos, change, error }: Props) {
  const [kind, setKind] = useState<DefectKind>('scratch')
  const [severity, setSeverity] = useState<Severity>('light')
  const { defects } = draft
  const put = (id: string, part: Partial<Defect>) =>
    change({ defects: defects.map(each => (each.id === id ? { ...each, ...part } : each)) })
  const remove = ({ id }: Defect) => change({ defects: defects.filter(each => each.id !== id) })
  const mark = (panel: PanelName, x: number, y: number) =>
    change({
      defects: [
        ...defects,
        {
          id: crypto.randomUUID(),
          panel,
          kind,
          severity,
          x: within(x, most.x),
          y: within(y, most.y),
          note: '',
          photoIds: [],
        },
      ],
    })
  return (
    <Card title={say('Marks')} about={say('choose what it is, then touch the car where it is')}>
      <div className={styles.tools}>
        <fieldset className={styles.chips} aria-label={say('What it is')}>
          {defectKinds.map(each => (
            <Chip
              key={each}
              type="radio"
              name="kind"
              label={kindWords(each)}
              checked={kind === each}
              onChange={() => setKind(each)}
            />
          ))}
        </fieldset>
        <fieldset className={styles.chips} aria-label={say('How bad')}>
          {severities.map(each => (
            <Chip
              key={each}
              type="radio"
              name="severity"
              label={severityWords[each]}
              checked={severity === each}
              onChange={() => setSeverity(each)}
            />
          ))}
        </fieldset>
        <NativeSelect
          aria-label={say('Body')}
          data={bodyShapes.map(shape => ({ value: shape, label: say(shape) }))}
          value={draft.shape}
          onChange={event => change({ shape: event.currentTarget.value as IntakeDraft['shape'] })}
        />
      </div>
      <CarDrawing
        shape={draft.shape}
        defects={defects}
        finishes={finishes}
        marking={say('a {severity} {kind}', {
          severity: severityText(severity),
          kind: withinSentence(kindWords(kind)),
        })}
        onMark={mark}
        onMove={(defect, x, y) => put(defect.id, { x: within(x, most.x), y: within(y, most.y) })}
        onRemove={remove}
      />
      {defects.length === 0 && (
        <p className={pieces.soft}>{say('No marks yet. Nothing marked means nothing was found.')}</p>
      )}
      <ol className={styles.marks} aria-label={say('Marks')}>
        {defects.map((defect, i) => (
          <li key={defect.id}>
            <b className={styles.number} aria-hidden="true">
              {i + 1}
            </b>
            <span className={styles.markWords}>{defectWords(defect)}</span>
            <TextInput
              aria-label={say('Note on mark {i}', { i: i + 1 })}
              placeholder={say('note')}
              maxLength={200}
              value={defect.note}
              onChange={event => put(defect.id, { note: event.currentTarget.value })}
            />
            {photos.length > 0 && (
              <NativeSelect
                aria-label={say('Photo of mark {i}', { i: i + 1 })}
                data={[
                  { value: '', label: say('no photo') },
                  ...photos.map(({ id, name }, n) => ({ value: id, label: `${n + 1} ${name}` })),
                ]}
                value={defect.photoIds[0] ?? ''}
                onChange={event =>
                  put(defect.id, { photoIds: event.currentTarget.value ? [event.currentTarget.value] : [] })
                }
              />
            )}
            <Button
              variant="default"
              onClick={() => remove(defect)}
              aria-label={say('Take out mark {i}', { i: i + 1 })}
            >
              {say('Take out')}
            </Button>
          </li>
        ))}
      </ol>
      {error && (
        <Group>
          <p role="alert" className={pieces.late}>
            {error}
          </p>
        </Group>
      )}
    </Card>
  )
}
