/** How many days a picture shows. */
export const daySpans = [
  { value: '1', label: 'Day' },
  { value: '3', label: 'Three days' },
  { value: '7', label: 'Week' },
]
