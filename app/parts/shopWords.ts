/** What the shop's fixed words are called on screens. */
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
  { value: 'wet', label: 'Wet', about: 'water and a drain' },
  { value: 'polish', label: 'Polish', about: 'light and room to work on paint' },
  { value: 'clean', label: 'Clean', about: 'still, dust-free air to lay a coat' },
  { value: 'cure', label: 'Cure', about: 'a car may stand here while it hardens' },
]

export const skillChoices: Choice<Skill>[] = [
  { value: 'wash', label: 'Wash' },
  { value: 'polish', label: 'Polish' },
  { value: 'coat', label: 'Coat' },
  { value: 'outside', label: 'Outside work' },
]

export const lentChoices: Choice<LentKind>[] = [
  { value: 'loan car', label: 'Loan car' },
  { value: 'key box', label: 'Key box' },
  { value: 'covered place', label: 'Place under cover' },
]

export const sizeChoices: Choice<SizeClass>[] = [
  { value: 'small', label: 'Small' },
  { value: 'medium', label: 'Medium' },
  { value: 'large', label: 'Large' },
  { value: 'xl', label: 'Extra large' },
]

export const finishChoices: Choice<Finish>[] = [
  { value: 'gloss', label: 'Gloss' },
  { value: 'satin', label: 'Satin' },
  { value: 'matte', label: 'Matte' },
  { value: 'film', label: 'Film' },
]

export const paintChoices: Choice<PaintSystem>[] = [
  { value: 'unknown', label: 'Not known' },
  { value: 'clear-coated', label: 'Clear-coated' },
  { value: 'single-stage', label: 'Single-stage' },
]

export const customerKindChoices: Choice<CustomerKind>[] = [
  { value: 'person', label: 'Person' },
  { value: 'firm', label: 'Firm' },
  { value: 'fleet', label: 'Fleet' },
]

export const panelFinishChoices: Choice<PanelFinish>[] = panelFinishes.map(value => ({
  value,
  label: value === 'respray' ? 'Fresh respray' : value.charAt(0).toUpperCase() + value.slice(1),
}))

export const stageChoices: Choice<Stage>[] = [
  { value: 'prepare', label: 'Prepare' },
  { value: 'dry', label: 'Dry and mask' },
  { value: 'test', label: 'Test spot' },
  { value: 'correct', label: 'Correct' },
  { value: 'rinse', label: 'Wash off and dry' },
  { value: 'wipe', label: 'Wipe down' },
  { value: 'coat', label: 'Coat' },
  { value: 'level', label: 'Level the coat' },
  { value: 'topper', label: 'Topper' },
  { value: 'finish', label: 'Finish' },
]

export const checkMomentChoices: Choice<CheckMoment>[] = [
  { value: 'arrival', label: 'As the car comes' },
  { value: 'coat', label: 'Before a coat' },
  { value: 'handover', label: 'Before it goes home' },
]

export const missedChoices: Choice<MissedWork>[] = [
  { value: 'again', label: 'Do the step again' },
  { value: 'abrade', label: 'Abrade it' },
  { value: 'redo', label: 'Take it off and redo' },
]

export const productKindChoices: Choice<ProductKind>[] = [
  { value: 'wash', label: 'Wash' },
  { value: 'decontaminant', label: 'Decontaminant' },
  { value: 'compound', label: 'Compound' },
  { value: 'polish', label: 'Polish' },
  { value: 'wipe', label: 'Panel wipe' },
  { value: 'coating', label: 'Coating' },
  { value: 'topper', label: 'Topper' },
  { value: 'consumable', label: 'Consumable' },
]

export const familyChoices: Choice<CoatingFamily>[] = [
  { value: 'paint', label: 'Paint' },
  { value: 'wheels', label: 'Wheels' },
  { value: 'glass', label: 'Glass' },
  { value: 'trim', label: 'Trim' },
  { value: 'interior', label: 'Interior' },
]

/** The label of a value in one of the lists above. */
export function labelOf<T extends string>(choices: readonly Choice<T>[], value: T): string {
  return choices.find(choice => choice.value === value)?.label ?? value
}

/** The labels of several, in running words: "wash, polish". */
export function labelsOf<T extends string>(choices: readonly Choice<T>[], values: readonly T[]): string {
  return values.map(value => labelOf(choices, value).toLowerCase()).join(', ')
}

/** Rows of the records to choose one of. */
export function choicesOf(rows: readonly { id: string; name: string }[] = []): Choice<string>[] {
  return rows.map(({ id, name }) => ({ value: id, label: name }))
}

/** A table of words as a list to choose from. */
export function choicesFrom<T extends string>(words: Readonly<Record<T, string>>): Choice<T>[] {
  return (Object.keys(words) as T[]).map(value => ({ value, label: words[value] }))
}
