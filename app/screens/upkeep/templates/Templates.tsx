import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowLinks } from '../../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { Waiting } from '../../../parts/Waiting.tsx'
import styles from '../Upkeep.module.css'
import { channelWords } from '../words.ts'
import { TemplateEditor } from './TemplateEditor.tsx'

/** The words reminders are written in, by channel and language. */
export function Templates({ id }: SectionProps) {
  const query = useQuery(trpc.templates.list.queryOptions())
  const known = query.data
  if (!known) return <Waiting error={query.error} words={say('Looking them up')} />
  const chosen = known.templates.find(template => template.id === id)
  // With a template open the note stands on it.
  const editing = chosen !== undefined || id === 'new'
  return (
    <>
      <ScreenTitle title={say('Templates')} />
      {!editing && (
        <p className={styles.law} role="note">
          {known.lawNote}
        </p>
      )}
      <div className={pieces.side}>
        <div className={pieces.column}>
          <RowLinks
            label={say('Templates')}
            to="/upkeep/$section/$id"
            section="templates"
            rows={known.templates.map(({ id, name, channel, words, version }) => ({
              id,
              title: name,
              about: `${channelWords[channel]}, ${Object.keys(words).join(', ')}${version === 0 ? say(', as the program brings it') : ''}`,
            }))}
          />
          <div>
            <Button component={Link} to="/upkeep/templates/new" variant="default">
              {say('Write a new one')}
            </Button>
          </div>
        </div>
        {editing ? (
          <TemplateEditor key={id} template={chosen} fields={known.fields} lawNote={known.lawNote} />
        ) : (
          <p className={pieces.empty}>
            {say(
              'Choose a template to read it with a real car’s values in, and to change its words. What is already written to owners keeps the words it was written in.',
            )}
          </p>
        )}
      </div>
    </>
  )
}
