import { afterEach, describe, expect, it } from 'vitest'
import { type Letter, type MailServer, sendMail } from '../../main/outbox/mail.ts'
import { startMailServer, type TestMailServer } from './mailServer.ts'

const open: TestMailServer[] = []
const start: typeof startMailServer = async options => {
  const server = await startMailServer(options)
  open.push(server)
  return server
}
afterEach(async () => {
  await Promise.all(open.splice(0).map(server => server.close()))
})

const at = (port: number, change: Partial<MailServer> = {}): MailServer => ({
  host: '127.0.0.1',
  port,
  security: 'none',
  user: null,
  password: null,
  ...change,
})

const letter: Letter = {
  from: { name: 'Ashdown Paint Care', address: 'hello@ashdown.example.com' },
  to: 'orders@carrow.example.com',
  subject: 'Purchase order 17, für Łódź',
  text: 'Dear all,\n\n12 × 50 ml, please.\n',
}

describe('a letter', () => {
  it('arrives as it was written, with what was attached', async () => {
    const server = await start()
    const bytes = Uint8Array.from({ length: 3000 }, (_, i) => i % 256)
    const outcome = await sendMail(at(server.port), {
      ...letter,
      messageId: 'order-17@ashdown.example.com',
      attachments: [{ name: 'order-17.pdf', type: 'application/pdf', bytes }],
    })
    expect(outcome).toMatchObject({ sent: true, messageId: '<order-17@ashdown.example.com>' })
    const [got] = server.letters
    expect(got).toMatchObject({ from: 'hello@ashdown.example.com', to: ['orders@carrow.example.com'] })
    expect(got!.headers['message-id']).toBe('<order-17@ashdown.example.com>')
    expect(got!.parts[0]!.bytes.toString('utf8').trim()).toBe('Dear all,\r\n\r\n12 × 50 ml, please.')
    expect(got!.parts[1]).toMatchObject({ type: 'application/pdf', name: 'order-17.pdf' })
    expect(got!.parts[1]!.bytes.equals(bytes)).toBe(true)
  })

  it('cannot grow a header field or a further address from a line end in its subject', async () => {
    const server = await start()
    await sendMail(at(server.port), {
      ...letter,
      subject: 'Order\r\nBcc: someone@elsewhere.example.com\r\n\r\nHello',
    })
    const [got] = server.letters
    expect(got!.to).toEqual(['orders@carrow.example.com'])
    expect(got!.headers.bcc).toBeUndefined()
    expect(got!.headers.subject).toBe('Order Bcc: someone@elsewhere.example.com Hello')
  })

  it('goes with a user name and password where the server asks for them', async () => {
    const server = await start({
      authOptional: false,
      onAuth: (auth, _, done) =>
        auth.username === 'ashdown' && auth.password === 'right'
          ? done(null, { user: 'ashdown' })
          : done(new Error('Invalid username or password')),
      allowInsecureAuth: true,
    })
    const outcome = await sendMail(at(server.port, { user: 'ashdown', password: 'right' }), letter)
    expect(outcome).toMatchObject({ sent: true })
    const refused = await sendMail(at(server.port, { user: 'ashdown', password: 'wrong' }), letter)
    expect(refused).toMatchObject({
      sent: false,
      why: 'settings',
      words: expect.stringContaining('password'),
    })
    expect(server.letters).toHaveLength(1)
  })
})

describe('a letter that does not go out says why, and what to do', () => {
  it('nobody answers: later', async () => {
    const server = await startMailServer()
    await server.close()
    expect(await sendMail(at(server.port), letter)).toMatchObject({
      sent: false,
      why: 'later',
      words: expect.stringContaining(`does not answer on port ${server.port}`),
    })
  })

  it('no such server: settings', async () => {
    const outcome = await sendMail(at(25, { host: 'mail.invalid' }), letter)
    expect(outcome).toMatchObject({ sent: false, why: expect.stringMatching(/settings|later/) })
  })

  // RFC 5321 section 4.2.1: 4yz asks to try again, 5yz is final.
  it.each([
    [451, 'later'],
    [550, 'letter'],
  ] as const)('the server says %i: %s', async (responseCode, why) => {
    const server = await start({
      onRcptTo: (_, __, done) => done(Object.assign(new Error('mailbox'), { responseCode })),
    })
    expect(await sendMail(at(server.port), letter)).toMatchObject({ sent: false, why })
    expect(server.letters).toHaveLength(0)
  })

  it('a safe connection that cannot be had is not replaced by an unsafe one', async () => {
    const clear = await start()
    expect(await sendMail(at(clear.port, { security: 'starttls' }), letter)).toMatchObject({
      sent: false,
      why: 'settings',
    })
    // The test server's certificate is its own: nobody vouches for it.
    const selfSigned = await start({ disabledCommands: [] })
    expect(await sendMail(at(selfSigned.port, { security: 'starttls' }), letter)).toMatchObject({
      sent: false,
      why: 'settings',
    })
    expect(clear.letters.concat(selfSigned.letters)).toHaveLength(0)
  })

  it('no password goes over the network in the clear', async () => {
    const outcome = await sendMail(at(25, { host: 'mail.example.com', user: 'a', password: 'b' }), letter)
    expect(outcome).toMatchObject({
      sent: false,
      why: 'settings',
      words: expect.stringContaining('in the clear'),
    })
  })
})
