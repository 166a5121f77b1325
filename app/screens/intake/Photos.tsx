import { Button, FileButton, Group } from '@mantine/core'
import { type DragEvent, useState } from 'react'
import type { IntakeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { askApp } from '../../data/connection.ts'
import { documentHref } from '../../data/door.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './Intake.module.css'

interface Props {
  jobId: string
  photos: IntakeView['photos']
}

/** Photos of the visit: dropped here, chosen, or taken with the camera. Kept at once, upright and without their place. */
export function Photos({ jobId, photos }: Props) {
  const [over, setOver] = useState(false)
  const [left, setLeft] = useState(0)
  const adding = useSaving({ mutationFn: (files: File[]) => addAll(jobId, files, setLeft) })
  const removing = useSaving(trpc.intake.removePhoto.mutationOptions())
  const add = (files: File[]) => files.length > 0 && adding.save(files)
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    add([...event.dataTransfer.files])
  }
  return (
    <Card
      title={say('Photos')}
      about={say('turned upright; where they were taken is not kept')}
      onDragOver={event => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
      data-over={over}
      className={`${pieces.card} ${styles.photos}`}
    >
      <ul className={styles.thumbnails}>
        {photos.map(({ id, name, width, height }, i) => (
          <li key={id}>
            <a
              className={styles.thumbnail}
              href={documentHref(`/documents/photo/${id}`)}
              target="_blank"
              rel="noreferrer"
            >
              <img
                src={documentHref(`/documents/thumbnail/${id}`)}
                alt={`${i + 1}: ${name}`}
                width={width}
                height={height}
                loading="lazy"
              />
            </a>
            <Button
              variant="subtle"
              aria-label={say('Take out photo {i}', { i: i + 1 })}
              loading={removing.busy}
              onClick={() => removing.save({ id })}
            >
              {say('Take out')}
            </Button>
          </li>
        ))}
      </ul>
      {photos.length === 0 && <p className={pieces.soft}>{say('No photo yet. Drop some here, or:')}</p>}
      <Group mt="sm">
        <FileButton accept="image/jpeg,image/png,image/webp" multiple onChange={add}>
          {props => (
            <Button variant="default" loading={adding.busy} {...props}>
              {say('Choose photos')}
            </Button>
          )}
        </FileButton>
        <FileButton accept="image/*" capture="environment" onChange={file => file && add([file])}>
          {props => (
            <Button variant="default" loading={adding.busy} {...props}>
              {say('Use the camera')}
            </Button>
          )}
        </FileButton>
        {adding.busy && (
          <span role="status" className={pieces.soft}>
            {say('{left} to go', { left })}
          </span>
        )}
      </Group>
      <Refused of={adding.error ?? removing.error} />
    </Card>
  )
}

/** One after another, so that a refused one does not take the others with it; all refusals are told at the end. */
async function addAll(jobId: string, files: readonly File[], tell: (left: number) => void): Promise<void> {
  const refused: string[] = []
  for (const [i, file] of files.entries()) {
    tell(files.length - i)
    const name = encodeURIComponent(file.name.slice(0, 200))
    const answer = await askApp(`/photos/${jobId}?name=${name}`, { method: 'POST', body: file })
    if (!answer.ok) refused.push(`${file.name}: ${await answer.text()}`)
  }
  if (refused.length > 0) throw new Error(refused.join('\n'))
}
