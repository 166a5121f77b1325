import '@mantine/core/styles.css'
import '@mantine/dates/styles.css'
import '@mantine/notifications/styles.css'
import '@mantine/spotlight/styles.css'
import '@fontsource-variable/inter'
import './theme/colours.css'
import './theme/touch.css'
import 'dayjs/locale/de'
import { MantineProvider } from '@mantine/core'
import { ModalsProvider } from '@mantine/modals'
import { Notifications } from '@mantine/notifications'
import { QueryClientProvider } from '@tanstack/react-query'
import { RouterProvider } from '@tanstack/react-router'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { listenForChanges } from './data/changes.ts'
import { queryClient } from './data/trpc.ts'
import { Dates } from './parts/Dates.tsx'
import { listenForPrinting } from './parts/printing.ts'
import { loadScreens, router } from './routes.tsx'
import { theme } from './theme/theme.ts'

/** Draws the window. Loaded once its language is known: what a module calls things is said as it is read. */
const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.content ?? ''
// What locks the page behind a dialog writes a style element of its own, and asks for the nonce under this name.
Object.assign(globalThis, { __webpack_nonce__: nonce })

listenForChanges()
listenForPrinting()
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <MantineProvider theme={theme} defaultColorScheme="auto" getStyleNonce={() => nonce}>
      <QueryClientProvider client={queryClient}>
        <Dates>
          <ModalsProvider>
            <Notifications position="bottom-left" />
            <RouterProvider router={router} />
          </ModalsProvider>
        </Dates>
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
)

// The first screen comes first.
const unsubscribe = router.subscribe('onRendered', () => {
  unsubscribe()
  // What cannot be had now is asked for again by whoever goes there.
  void loadScreens().catch(() => {})
})
