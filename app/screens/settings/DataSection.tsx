import { Button, Group, Progress, Text } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { useAct } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullWords } from '../../parts/time.ts'
import { Heading } from './Heading.tsx'

/** Everything the shop keeps, as a file that other programs read. */
export function DataSection() {
  const { zone } = useShop()
  const standing = useQuery({
    ...trpc.leaving.standing.queryOptions(),
    refetchInterval: query => (query.state.data?.working ? 500 : 60_000),
  }).data
  const pack = useAct(trpc.leaving.pack.mutationOptions())
  const stop = useAct(trpc.leaving.stop.mutationOptions())
  const forget = useAct(trpc.leaving.forget.mutationOptions())
  const { working, ready, failed } = standing ?? {}
  const share = working && working.total > 0 ? (100 * working.done) / working.total : 0
  return (
    <>
      <Heading title={say('Your data')}>
        {say(
          'Everything the shop keeps is yours to take along: a list (CSV) of each kind of thing for a spreadsheet, and one JSON file with its published schema for another program.',
        )}
      </Heading>
      <Card title={say('Bring your own data')}>
        <Text mb="sm">{say('Customers, vehicles, past coatings and products from a CSV or XLSX list.')}</Text>
        <Button variant="default" component={Link} to="/imports">
          {say('Take in a list')}
        </Button>
      </Card>
      <Card title={say('Take your data with you')}>
        {working ? (
          <>
            <Text role="status">
              {say('Packing: {share} %. The desk goes on meanwhile.', { share: Math.floor(share) })}
            </Text>
            <Progress value={share} aria-label={say('Packed so far')} my="sm" />
            <Button variant="default" loading={stop.busy} onClick={() => stop.run()}>
              {say('Stop')}
            </Button>
          </>
        ) : (
          <>
            {ready && (
              <Text role="status" mb="sm">
                {say('One file of {bytes}, as things stood on {madeAt}. It is kept for a day.', {
                  bytes: sizeWords(ready.bytes),
                  madeAt: fullWords(ready.madeAt, zone),
                })}
              </Text>
            )}
            <Group>
              {ready && (
                <DocumentButton path="/documents/everything.zip" variant="filled">
                  {say('Save the file')}
                </DocumentButton>
              )}
              <Button variant={ready ? 'default' : 'filled'} loading={pack.busy} onClick={() => pack.run()}>
                {ready ? say('Pack it anew') : say('Pack everything into one file')}
              </Button>
              {ready && (
                <Button variant="subtle" color="red" loading={forget.busy} onClick={() => forget.run()}>
                  {say('Delete the file here')}
                </Button>
              )}
            </Group>
            <Text mt="sm" className={pieces.soft}>
              {say(
                'It holds names, addresses and prices, and is not locked: keep it where nobody else reads it. Passwords and keys are not in it.',
              )}
            </Text>
          </>
        )}
        <Refused words={failed ?? null} />
        <Refused of={pack.error ?? stop.error ?? forget.error} />
      </Card>
    </>
  )
}

function sizeWords(bytes: number): string {
  return bytes < 1_000_000
    ? say('{max} kB', { max: Math.max(1, Math.round(bytes / 1000)) })
    : say('{bytes} MB', { bytes: Math.round(bytes / 1e6) })
}
