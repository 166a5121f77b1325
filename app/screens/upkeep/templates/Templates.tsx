import { Alert, Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { faultOf, trpc } from '../../../data/trpc.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import styles from '../Upkeep.module.css'
import { channelWords } from '../words.ts'
import { TemplateEditor } from './TemplateEditor.tsx'

/** The words reminders are written in, by channel and language. */
export function Templates({ id }: SectionProps) {
  const query = useQuery(trpc.templates.list.queryOptions())
  const known = query.data
  if (query.error) return <Alert color="red">{faultOf(query.error).message}</Alert>
  if (!known) return <p className={styles.soft}>Looking them up …</p>
  const chosen = known.templates.find(template => template.id === id)
  // With a template open the note stands on it.
  const editing = chosen !== undefined || id === 'new'
  return (
    <>
      <div className={styles.heading}>
        <h1>Templates</h1>
      </div>
      {!editing && (
        <p className={styles.law} role="note">
          {known.lawNote}
        </p>
      )}
      <div className={styles.side}>
        <div className={styles.stack}>
          <ul className={styles.rows} aria-label="Templates">
            {known.templates.map(template => (
              <li key={template.id}>
                <Link to="/upkeep/$section/$id" params={{ section: 'templates', id: template.id }}>
                  <b>{template.name}</b>
                  <small>
                    {channelWords[template.channel]}, {Object.keys(template.words).join(', ')}
                    {template.version === 0 && ', as the program brings it'}
                  </small>
                </Link>
              </li>
            ))}
          </ul>
          <div>
            <Button
              variant="default"
              renderRoot={props => (
                <Link to="/upkeep/$section/$id" params={{ section: 'templates', id: 'new' }} {...props} />
              )}
            >
              Write a new one
            </Button>
          </div>
        </div>
        {editing ? (
          <TemplateEditor key={id} template={chosen} fields={known.fields} lawNote={known.lawNote} />
        ) : (
          <p className={styles.empty}>
            Choose a template to read it with a real car’s values in, and to change its words. What is already
            written to owners keeps the words it was written in.
          </p>
        )}
      </div>
    </>
  )
}
