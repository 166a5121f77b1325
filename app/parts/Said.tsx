import pieces from './pieces.module.css'

/** What was just done, in words that stay until the next. */
export function Said({ words }: { words: readonly string[] }) {
  return (
    <div role="status" className={pieces.kept}>
      {words.map(each => (
        <p key={each}>✓ {each}</p>
      ))}
    </div>
  )
}
