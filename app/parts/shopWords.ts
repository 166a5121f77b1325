/** What the shop's fixed words are called on screens. */
import { say, withinSentence } from '../../main/domain/language/index.ts'
import {
  type Capability,
  type CheckMoment,
  type CoatingFamily,
  type CustomerKind,
  type Finish,
  type LentKind,
  type MissedWork,
  type PaintSystem,
  type PanelFinish,
  type ProductKind,
  panelFinishes,
  type SizeClass,
  type Skill,
  type Stage,
} from '../../main/domain/shop/index.ts'

interface Choice<T> {
  value: T
  label: string
}

export const capabilityChoices: (Choice<Capability> & { about: string })[] = [
  { value: 'wet', label: say('Wet'), about: say('water and a drain') },
  { value: 'polish', label: say('Polish'), about: say('light and room to work on paint') },
  { value: 'clean', label: say('Clean'), about: say('still, dust-free air to lay a coat') },
  { value: 'cure', label: say('Cure'), about: say('a car may stand here while it hardens') },
]

export const skillChoices: Choice<Skill>[] = [
  { value: 'wash', label: say('Wash') },
  { value: 'polish', label: say('Polish') },
  { value: 'coat', label: say('Coat') },
  { value: 'outside', label: say('Outside work') },
]

export const lentChoices: Choice<LentKind>[] = [
  { value: 'loan car', label: say('Loan car') },
  { value: 'key box', label: say('Key box') },
  { value: 'covered place', label: say('Place under cover') },
]

export const sizeChoices: Choice<SizeClass>[] = [
  { value: 'small', label: say('Small') },
  { value: 'medium', label: say('Medium') },
  { value: 'large', label: say('Large') },
  { value: 'xl', label: say('Extra large') },
]

export const finishChoices: Choice<Finish>[] = [
  { value: 'gloss', label: say('Gloss||the finish') },
  { value: 'satin', label: say('Satin') },
  { value: 'matte', label: say('Matte') },
  { value: 'film', label: say('Film') },
]

export const paintChoices: Choice<PaintSystem>[] = [
  { value: 'unknown', label: say('Not known') },
  { value: 'clear-coated', label: say('Clear-coated') },
  { value: 'single-stage', label: say('Single-stage') },
]

export const customerKindChoices: Choice<CustomerKind>[] = [
  { value: 'person', label: say('Person') },
  { value: 'firm', label: say('Firm') },
  { value: 'fleet', label: say('Fleet') },
]

const panelFinishNames: Readonly<Record<PanelFinish, string>> = {
  gloss: say('Gloss||the finish'),
  'single stage': say('Single stage'),
  satin: say('Satin'),
  matte: say('Matte'),
  film: say('Film'),
  'matte film': say('Matte film'),
  respray: say('Fresh respray'),
  plastic: say('Plastic'),
  glass: say('Glass'),
  wheel: say('Wheel'),
}

export const panelFinishChoices: Choice<PanelFinish>[] = panelFinishes.map(value => ({
  value,
  label: panelFinishNames[value],
}))

export const stageChoices: Choice<Stage>[] = [
  { value: 'prepare', label: say('Prepare') },
  { value: 'dry', label: say('Dry and mask') },
  { value: 'test', label: say('Test spot') },
  { value: 'correct', label: say('Correct') },
  { value: 'rinse', label: say('Wash off and dry') },
  { value: 'wipe', label: say('Wipe down') },
  { value: 'coat', label: say('Coat') },
  { value: 'level', label: say('Level the coat') },
  { value: 'topper', label: say('Topper') },
  { value: 'finish', label: say('Finish||the stage') },
]

export const checkMomentChoices: Choice<CheckMoment>[] = [
  { value: 'arrival', label: say('As the car comes') },
  { value: 'coat', label: say('Before a coat') },
  { value: 'handover', label: say('Before it goes home') },
]

export const missedChoices: Choice<MissedWork>[] = [
  { value: 'again', label: say('Do the step again') },
  { value: 'abrade', label: say('Abrade it') },
  { value: 'redo', label: say('Take it off and redo') },
]

export const productKindChoices: Choice<ProductKind>[] = [
  { value: 'wash', label: say('Wash||the product') },
  { value: 'decontaminant', label: say('Decontaminant') },
  { value: 'compound', label: say('Compound') },
  { value: 'polish', label: say('Polish||the product') },
  { value: 'wipe', label: say('Panel wipe') },
  { value: 'coating', label: say('Coating') },
  { value: 'topper', label: say('Topper') },
  { value: 'consumable', label: say('Consumable') },
]

export const familyChoices: Choice<CoatingFamily>[] = [
  { value: 'paint', label: say('Paint') },
  { value: 'wheels', label: say('Wheels') },
  { value: 'glass', label: say('Glass') },
  { value: 'trim', label: say('Trim') },
  { value: 'interior', label: say('Interior') },
]

/** The label of a value in one of the lists above. */
export function labelOf<T extends string>(choices: readonly Choice<T>[], value: T): string {
  return choices.find(choice => choice.value === value)?.label ?? value
}

/** The labels of several, in running words: "wash, polish". */
export function labelsOf<T extends string>(choices: readonly Choice<T>[], values: readonly T[]): string {
  return values.map(value => withinSentence(labelOf(choices, value))).join(', ')
}

/** Rows of the records to choose one of. */
export function choicesOf(rows: readonly { id: string; name: string }[] = []): Choice<string>[] {
  return rows.map(({ id, name }) => ({ value: id, label: name }))
}

/** A table of words as a list to choose from. */
export function choicesFrom<T extends string>(words: Readonly<Record<T, string>>): Choice<T>[] {
  return (Object.keys(words) as T[]).map(value => ({ value, label: words[value] }))
}
