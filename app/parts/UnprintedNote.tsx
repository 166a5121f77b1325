import { say } from '../../main/domain/language/index.ts'
import { unprintedIn } from '../../main/domain/shop/index.ts'
import pieces from './pieces.module.css'

/** Says beside a name which of its letters the papers cannot write. */
export function UnprintedNote({ of }: { of: string }) {
  const letters = unprintedIn(of)
  if (letters === '') return null
  return (
    <p className={pieces.late}>
      {say('⚑ These letters print as empty boxes on papers: {letters}. Add the name in Latin letters.', {
        letters: Array.from(letters).slice(0, 12).join(' '),
      })}
    </p>
  )
}
