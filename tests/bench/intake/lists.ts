/** Lists of a size no shop has, with bad rows among them. Invented names; phone numbers reserved for fiction. */

const first = ['Ines', 'Oda', 'Wim', 'Zoë', 'Ødger', 'Leila', 'محمد', 'דנה', 'Hana', 'Tomás']
const last = ['Vale', 'Brandt', 'Alder', 'Ångström', 'Marsh', 'Okoro', 'Lund', 'Quist', 'Rowe', 'Sella']

/** So many rows of customers, each twentieth of them bad: a phone or an address that is none, or no name. */
export function customerList(count: number): string {
  const lines = ['Name,Phone,E-mail,Address,Tags,Notes']
  for (let i = 0; i < count; i++) {
    const name = `${first[i % 10]} ${last[Math.floor(i / 10) % 10]} ${i}`
    const phone = `(212) 555-01${String(i % 100).padStart(2, '0')}`
    const mail = `owner${i}@example.com`
    const bad = i % 20 === 7 ? ((i / 20) % 3) | 0 : -1
    lines.push(
      [
        bad === 0 ? '' : name,
        bad === 1 ? '12' : phone,
        bad === 2 ? 'no address' : mail,
        `"${i} Quarry Lane\nAshdown"`,
        'north;monthly',
        `"says ""hello"" 👋 ${i}"`,
      ].join(','),
    )
  }
  return `${lines.join('\r\n')}\r\n`
}
