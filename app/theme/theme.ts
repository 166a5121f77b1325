import {
  Checkbox,
  createTheme,
  defaultVariantColorsResolver,
  type MantineColorsTuple,
  Modal,
  Notification,
  SegmentedControl,
} from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'
import controls from './controls.module.css'

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

/** Greys of the dark scheme, from ink to deepest paper, in the hues of colours.css. */
const dark: MantineColorsTuple = [
  '#ece7dd',
  '#c9c8c4',
  '#a3acb8',
  '#7d8793',
  '#3a424d',
  '#2a3039',
  '#14171c',
  '#1c2027',
  '#101317',
  '#0b0d10',
]

/** The red of what is late, likewise. */
const red: MantineColorsTuple = [
  '#fdeef0',
  '#f8d5da',
  '#f6a9b4',
  '#ff7c8e',
  '#e05a6e',
  '#c73d54',
  '#b73049',
  '#a8273f',
  '#8a1f33',
  '#6b1727',
]

/** The ochre of holds, for warnings: deep enough from the seventh on to be read on paper. */
const orange: MantineColorsTuple = [
  '#fdf3e7',
  '#f6e0c6',
  '#ecc79a',
  '#e0a05f',
  '#d18f4a',
  '#c9803a',
  '#b06c28',
  '#8f5410',
  '#774509',
  '#5c3505',
]

/** Every calendar: what its signs are called, and its own days alone, in ink, since red is for what is wrong. */
const calendar = {
  defaultProps: {
    hideOutsideDates: true,
    weekendDays: [],
    ariaLabels: {
      previousMonth: say('The month before'),
      nextMonth: say('The month after'),
      previousYear: say('The year before'),
      nextYear: say('The year after'),
      previousDecade: say('Ten years before'),
      nextDecade: say('Ten years after'),
    },
  },
}

export const theme = createTheme({
  primaryColor: 'work',
  primaryShade: { light: 7, dark: 3 },
  autoContrast: true,
  // The library judges contrast by the light scheme's shade; the words on solid work have a colour of their own.
  variantColorResolver: input => {
    const colours = defaultVariantColorsResolver(input)
    const solidWork = input.variant === 'filled' && (input.color ?? 'work') === 'work'
    return solidWork ? { ...colours, color: 'var(--work-ink)' } : colours
  },
  components: {
    DatePicker: calendar,
    DatePickerInput: calendar,
    DateTimePicker: calendar,
    Checkbox: Checkbox.extend({ defaultProps: { iconColor: 'var(--work-ink)' } }),
    // What a field is explained by stands below it, so that fields beside each other keep one line.
    InputWrapper: { defaultProps: { inputWrapperOrder: ['label', 'input', 'description', 'error'] } },
    SegmentedControl: SegmentedControl.extend({
      classNames: {
        root: controls.segments!,
        indicator: controls.segment!,
        label: controls.segmentLabel!,
        control: controls.segmentCell!,
      },
    }),
    // A dialog lies on the page as a card does: the foot of its form has the ground of the rest.
    Modal: Modal.extend({
      defaultProps: { closeButtonProps: { 'aria-label': say('Close') } },
      styles: {
        content: { background: 'var(--card)' },
        header: { background: 'var(--card)' },
        title: { fontWeight: 640 },
      },
    }),
    Notification: Notification.extend({
      defaultProps: { closeButtonProps: { 'aria-label': say('Close') } },
      styles: { description: { color: 'var(--soft)' } },
    }),
  },
  colors: { work, dark, orange, red },
  fontFamily: '"Inter Variable", Inter, system-ui, sans-serif',
  fontSizes: {
    xs: 'var(--text-xs)',
    sm: 'var(--text-s)',
    md: 'var(--text-m)',
    lg: 'var(--text-l)',
    xl: 'var(--text-xl)',
  },
  headings: { fontFamily: '"Inter Variable", Inter, system-ui, sans-serif', fontWeight: '640' },
  defaultRadius: 'md',
  cursorType: 'pointer',
  focusRing: 'auto',
  respectReducedMotion: true,
})
