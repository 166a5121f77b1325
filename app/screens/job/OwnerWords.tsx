import { Button, CopyButton, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { documentHref } from '../../data/door.ts'
import { trpc } from '../../data/trpc.ts'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/** What the owner is told of keeping the car dry and washing it first, with dates for the weather outside. */
export function OwnerWords({ job }: { job: JobView }) {
  const { data } = useQuery(trpc.jobs.ownerWords.queryOptions({ id: job.id }))
  const [typedC, setTypedC] = useState<number | null | undefined>(undefined)
  const outside = useJobAct(trpc.jobs.outside.mutationOptions(), () => setTypedC(undefined))
  if (!data) return null
  const value = typedC === undefined ? data.outsideC : typedC
  return (
    <section className={styles.card}>
      <h2>{say('Words for {name}', { name: job.customer.name })}</h2>
      <Group align="flex-end" gap="sm">
        <DegreesInput
          label={say('Outside, in the days to come')}
          description={say('Empty: the season’s usual')}
          value={value}
          onChange={setTypedC}
        />
        <Button
          variant="default"
          disabled={value === data.outsideC}
          loading={outside.isPending}
          onClick={() => outside.mutate({ id: job.id, version: job.version, outsideC: value })}
        >
          {say('Use it')}
        </Button>
      </Group>
      <pre className={pieces.quoted}>{data.text}</pre>
      <Group gap="sm">
        <CopyButton value={data.text}>
          {({ copied, copy }) => (
            <Button size="compact-sm" variant="default" onClick={copy}>
              {copied ? say('Copied ✓') : say('Copy the text')}
            </Button>
          )}
        </CopyButton>
        {data.to && (
          <Button
            size="compact-sm"
            variant="default"
            component="a"
            href={`mailto:${data.to}?subject=${encodeURIComponent(data.subject)}&body=${encodeURIComponent(data.text)}`}
          >
            {say('Open as e-mail')}
          </Button>
        )}
        <Button
          size="compact-sm"
          variant="default"
          component="a"
          target="_blank"
          rel="noreferrer"
          href={documentHref(`/documents/care/${job.id}.pdf`)}
        >
          {say('Care sheet')}
        </Button>
      </Group>
    </section>
  )
}
