import { Button, Group, Progress, Text } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
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
      <Heading title="Your data">
        Everything the shop keeps is yours to take along: a list (CSV) of each kind of thing for a
        spreadsheet, and one JSON file with its published schema for another program.
      </Heading>
      <Card title="Bring your own data">
        <Text mb="sm">Customers, vehicles, past coatings and products from a CSV or XLSX list.</Text>
        <Button variant="default" component={Link} to="/imports">
          Take in a list
        </Button>
      </Card>
      <Card title="Take your data with you">
        {working ? (
          <>
            <Text role="status">Packing: {Math.floor(share)} %. The desk goes on meanwhile.</Text>
            <Progress value={share} aria-label="Packed so far" my="sm" />
            <Button variant="default" loading={stop.busy} onClick={() => stop.run()}>
              Stop
            </Button>
          </>
        ) : (
          <>
            {ready && (
              <Text role="status" mb="sm">
                One file of {sizeWords(ready.bytes)}, as things stood on {fullWords(ready.madeAt, zone)}. It
                is kept for a day.
              </Text>
            )}
            <Group>
              {ready && (
                <DocumentButton path="/documents/everything.zip" variant="filled">
                  Save the file
                </DocumentButton>
              )}
              <Button variant={ready ? 'default' : 'filled'} loading={pack.busy} onClick={() => pack.run()}>
                {ready ? 'Pack it anew' : 'Pack everything into one file'}
              </Button>
              {ready && (
                <Button variant="subtle" color="red" loading={forget.busy} onClick={() => forget.run()}>
                  Delete the file here
                </Button>
              )}
            </Group>
            <Text mt="sm" className={pieces.soft}>
              It holds names, addresses and prices, and is not locked: keep it where nobody else reads it.
              Passwords and keys are not in it.
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
  return bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${Math.round(bytes / 1e6)} MB`
}
