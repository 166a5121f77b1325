/** A letter ready to send, as a link that the mail program of the computer takes (RFC 6068). */
export function mailHref(letter: { to: string; subject: string; text: string }): string {
  const subject = encodeURIComponent(letter.subject)
  // Section 5: a line of the body ends with CR and LF.
  const body = encodeURIComponent(letter.text.replaceAll(/\r?\n/g, '\r\n'))
  // The @ may stand as it is.
  return `mailto:${encodeURIComponent(letter.to).replaceAll('%40', '@')}?subject=${subject}&body=${body}`
}
