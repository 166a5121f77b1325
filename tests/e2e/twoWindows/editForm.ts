import type { Page } from '@playwright/test'
import type { Ids } from './shop.ts'

/** A form that edits what is there already, and how two windows get at it. */
export interface EditForm {
  /** Below app/. */
  file: string
  at(ids: Ids): string
  open?(page: Page): Promise<void>
  /** The form's name, where the page has several. */
  form: string | RegExp
  field: string
  /** What the first window saves, and the second has typed meanwhile. */
  first: string
  second: string
  /** The button that saves; "Save" where nothing is said. */
  save?: string
}
