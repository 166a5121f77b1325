import { Button, FileInput, Text, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { VerifyView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Facts } from '../../parts/Facts.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { readProof } from './readProof.ts'

/** Whether a certificate somebody brings, on paper or as a file, agrees with the record. */
export function Verify() {
  const [code, setCode] = useState('')
  const [fromFile, setFromFile] = useState<{ name: string; found: boolean } | null>(null)
  const [answer, setAnswer] = useState<VerifyView | null>(null)
  const asking = useSaving(trpc.applied.verify.mutationOptions(), { onRefused: () => setAnswer(null) })
  const ask = (of: string, statement: string | null) => asking.save({ code: of, statement }, setAnswer)
  const choose = async (file: File | null) => {
    if (!file) return
    const proof = await readProof(file)
    setFromFile({ name: file.name, found: proof.code !== null })
    setAnswer(null)
    if (proof.code === null) return
    setCode(proof.code)
    ask(proof.code, proof.statement)
  }
  return (
    <>
      <header className={pieces.heading}>
        <h1>{say('Check a certificate')}</h1>
      </header>
      <Card title={say('The certificate')}>
        <form
          onSubmit={event => {
            event.preventDefault()
            ask(code, null)
          }}
        >
          <Textarea
            label={say('Its code')}
            description={say('Scan the square on the paper, or paste the line under it')}
            autosize
            minRows={2}
            maxRows={4}
            maw={640}
            maxLength={1000}
            value={code}
            onChange={event => {
              setCode(event.currentTarget.value)
              setAnswer(null)
            }}
          />
          <FileInput
            label={say('Or its file')}
            description={say('The certificate as PDF, or the page that checks it')}
            placeholder={fromFile?.name ?? say('choose a file')}
            accept="application/pdf,text/html"
            maw={400}
            mt="sm"
            value={null}
            onChange={choose}
            error={fromFile?.found === false && say('There is no code in this file; choose the certificate.')}
          />
          <Button
            type="submit"
            mt="md"
            style={{ alignSelf: 'start' }}
            disabled={code.trim() === ''}
            loading={asking.busy}
          >
            {say('Check')}
          </Button>
        </form>
        <Refused of={asking.error} />
      </Card>
      {answer && <Answer answer={answer} />}
    </>
  )
}

function Answer({ answer: { yes, words, reference, sections } }: { answer: VerifyView }) {
  return (
    <Card title={say('Certificate {reference}', { reference })}>
      <Text role="status" fw={600} c={yes ? 'var(--ok)' : 'var(--late)'}>
        {yes ? '✓' : '⚑'} {words}
      </Text>
      {sections && (
        <>
          <p className={pieces.soft}>{say('This is what the record says; hold it against the paper.')}</p>
          {sections.map(({ title, facts }) => (
            <section key={title}>
              <h3>{title}</h3>
              <Facts of={Object.fromEntries(facts.filter(([, said]) => said !== ''))} />
            </section>
          ))}
        </>
      )}
    </Card>
  )
}
