import { type ComponentProps, type ReactNode, useId } from 'react'
import pieces from './pieces.module.css'

interface Props extends Omit<ComponentProps<'section'>, 'title' | 'about'> {
  title?: ReactNode
  /** A few words beside the title. */
  about?: ReactNode
  /** What to say where there is nothing to show. */
  empty?: ReactNode
}

/** A titled part of a screen, which is found by its title too; says so where it has nothing to show. */
export function Card({ title, about, className = pieces.card, empty, children, ...rest }: Props) {
  const id = useId()
  const labelled = title && !rest['aria-label'] ? id : undefined
  return (
    <section aria-labelledby={labelled} {...rest} className={className}>
      {title && (
        <h2 id={id}>
          {title} {about && <small>{about}</small>}
        </h2>
      )}
      {empty ? <p className={pieces.soft}>{empty}</p> : children}
    </section>
  )
}
