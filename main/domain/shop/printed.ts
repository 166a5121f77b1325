/** The scripts that the fonts of the documents write, with what belongs to all of them: signs, figures, marks. */
const carried =
  /[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Script=Common}\p{Script=Inherited}]/u

/** The letters of a name that print as empty boxes, because no font that comes along writes their script; none: empty. */
export function unprintedIn(words: string): string {
  return [...new Set(words)].filter(letter => !carried.test(letter)).join('')
}
