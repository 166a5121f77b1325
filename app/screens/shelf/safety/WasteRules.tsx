import { Textarea } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { WasteRuleView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'

/** What the shop does with what is left after the work; shown on the morning sheet and on every job that makes it. */
export function WasteRules() {
  const rules = useQuery(trpc.safety.waste.queryOptions()).data
  return (
    <Card title={say('Waste')}>
      <p className={pieces.soft}>
        {say(
          'Your own rule for each stands on the morning sheet and on the jobs that make it. The data sheet, your local code and your waste carrier decide.',
        )}
      </p>
      {rules?.map(rule => (
        <WasteRule key={rule.stream} of={rule} />
      ))}
    </Card>
  )
}

function WasteRule({ of: { stream, title, caution, source, rule, version } }: { of: WasteRuleView }) {
  const form = useForm({
    saved: { rule },
    version,
    saving: trpc.safety.saveWasteRule.mutationOptions(),
    send: (value, version) => ({ stream, version, ...value }),
  })
  return (
    <Form
      form={form}
      label={say('Waste: {title}', { title })}
      save={form.dirty ? say('Save the rule') : null}
    >
      <Textarea
        label={title}
        description={`${caution} (${source})`}
        placeholder={say('where it goes in this shop, and who fetches it')}
        autosize
        minRows={1}
        {...form.field('rule')}
      />
    </Form>
  )
}
