import { Text, Title } from '@mantine/core'

/** What a section is, and what it is for. */
export function Heading({ title, children }: { title: string; children: string }) {
  return (
    <div>
      <Title order={2} size="1.25rem">
        {title}
      </Title>
      <Text c="dimmed" mt={4} maw="76ch">
        {children}
      </Text>
    </div>
  )
}
