import type { ReactNode } from 'react'

/** What is too long for its card: it scrolls there, by keys too. */
export function Scrolled({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
    <section tabIndex={0} aria-label={label} style={{ maxHeight: '16rem', overflow: 'auto' }}>
      {children}
    </section>
  )
}
