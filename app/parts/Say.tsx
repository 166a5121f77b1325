import { Fragment, type ReactNode } from 'react'
import { languageNow, messageIn, textIn } from '../../main/domain/language/index.ts'

const tags = {
  b: (words: ReactNode[]) => <b>{words}</b>,
  i: (words: ReactNode[]) => <i>{words}</i>,
  em: (words: ReactNode[]) => <em>{words}</em>,
  strong: (words: ReactNode[]) => <strong>{words}</strong>,
  small: (words: ReactNode[]) => <small>{words}</small>,
  kbd: (words: ReactNode[]) => <kbd>{words}</kbd>,
}

/** A text with parts set apart (`<b>`, `<small>`, `<kbd>` in the text) or with pieces of a screen among its words. */
export function Say({ text, values }: { text: string; values?: Record<string, ReactNode> }) {
  const language = languageNow()
  const said = messageIn(language, textIn(language, text), false).format<ReactNode>({ ...tags, ...values })
  return Array.isArray(said)
    ? said.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one text keep their order.
        <Fragment key={at}>{part}</Fragment>
      ))
    : said
}
