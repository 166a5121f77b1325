import { createTheme, type MantineColorsTuple } from '@mantine/core'

/** The blue of hands-on work, from pale to deep. */
const work: MantineColorsTuple = [
  '#eef2f9',
  '#dbe2ef',
  '#b4c2de',
  '#8fa6d6',
  '#6a82b5',
  '#4d659a',
  '#3d5483',
  '#31456b',
  '#263755',
  '#1a273e',
]

export const theme = createTheme({
  primaryColor: 'work',
  primaryShade: { light: 7, dark: 3 },
  autoContrast: true,
  colors: { work },
  fontFamily: '"Inter Variable", Inter, system-ui, sans-serif',
  headings: { fontFamily: '"Inter Variable", Inter, system-ui, sans-serif', fontWeight: '640' },
  defaultRadius: 'md',
  cursorType: 'pointer',
  focusRing: 'auto',
})
