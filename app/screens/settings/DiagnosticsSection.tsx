import { Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './Diagnostics.module.css'
import { Heading } from './Heading.tsx'

/** What may be sent to whoever looks after the app, to be read before it is saved. */
export function DiagnosticsSection() {
  const shown = useQuery({
    ...trpc.system.diagnostics.queryOptions(),
    // What is saved is what was read: it does not change under the reader.
    staleTime: Number.POSITIVE_INFINITY,
    refetchOnWindowFocus: false,
    refetchOnMount: 'always',
  }).data
  return (
    <>
      <Heading title={say('Diagnostics')}>
        {say(
          'When something goes wrong, send this to whoever looks after the app. It holds counts, versions and places in the program: no customer, car, phone number, address, price or text of yours.',
        )}
      </Heading>
      {shown && (
        <div className={pieces.card}>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls in itself must take the keys */}
          <section className={styles.text} tabIndex={0} aria-label={say('What will be saved')}>
            <pre>{shown.text}</pre>
          </section>
          <Group mt="sm">
            <DocumentButton path="/documents/diagnostics.txt">{say('Save as a file')}</DocumentButton>
          </Group>
        </div>
      )}
    </>
  )
}
