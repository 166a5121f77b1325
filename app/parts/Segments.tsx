import { SegmentedControl, type SegmentedControlProps, Text } from '@mantine/core'

/** One of a few words side by side, under what it is. */
export function Segments<T extends string>({ label, ...rest }: { label: string } & SegmentedControlProps<T>) {
  return (
    <div>
      <Text size="sm" fw={500} mb={4}>
        {label}
      </Text>
      <SegmentedControl fullWidth {...rest} />
    </div>
  )
}
