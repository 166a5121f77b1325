import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { trpc } from '../data/trpc.ts'

interface Typed {
  name?: string
  phone?: string
  email?: string
  plate?: string
  vin?: string
  /** Somebody on file, who is not like themselves. */
  exceptId?: string | undefined
}

/** Who is likely on file already, by what is typed so far; looked up once the hands rest. */
export function useAlike({ exceptId, ...typed }: Typed) {
  const [asked] = useDebouncedValue(typed, 250)
  const text = Object.fromEntries(Object.entries(asked).map(([field, said]) => [field, said.slice(0, 200)]))
  const enough = Object.values(text).some(said => said.trim().length >= 2)
  const found = useQuery({
    ...trpc.customers.alike.queryOptions(
      { ...text, ...(exceptId !== undefined && { exceptId }) },
      { placeholderData: before => before },
    ),
    enabled: enough,
  }).data
  return (enough && found) || []
}
