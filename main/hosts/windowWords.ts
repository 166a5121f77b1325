/** What the window's process prints once its window is there: `npm start` listens for it. */
export const windowIsOpen = 'Lustrum is open in its window'

/** It ends with this after saying in words why it will not open: the browser would not do so either. */
export const refusedStatus = 2
