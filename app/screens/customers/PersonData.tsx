import { Button, Group } from '@mantine/core'
import type { CustomerView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Refused } from '../../parts/form/Refused.tsx'

/** What the shop holds about a person: to be given to them, or to be taken out. */
export function PersonData({ customer: { id, version } }: { customer: CustomerView }) {
  const erase = useSaving(trpc.leaving.erase.mutationOptions())
  return (
    <Card title={say('Everything about this person')}>
      <p>
        {say(
          'Their file holds all that is kept about them, their cars and visits, as lists and as JSON. Erasing takes name and addresses out everywhere; the books stay.',
        )}
      </p>
      <Group>
        <DocumentButton path={`/documents/person/${id}.zip`}>{say('Save their file')}</DocumentButton>
        <Button variant="subtle" color="red" loading={erase.busy} onClick={() => erase.save({ id, version })}>
          {say('Erase this person')}
        </Button>
      </Group>
      <Refused of={erase.error} />
    </Card>
  )
}
