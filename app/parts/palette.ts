import { createSpotlight } from '@mantine/spotlight'

/** The palette's own state, and `palette.open()`. */
export const [paletteStore, palette] = createSpotlight()

/**
 * Marks the first result, so that Enter takes it. The library does so when the text changes; results that come from the
 * server come later.
 */
export function markFirstResult(): void {
  const list = document.getElementById(paletteStore.getState().listId)
  list?.querySelector('[data-selected]')?.removeAttribute('data-selected')
  const first = list?.querySelector('[data-action]')
  first?.setAttribute('data-selected', 'true')
  paletteStore.updateState(state => ({ ...state, selected: first ? 0 : -1 }))
}
