import type { Channel } from '../consent.ts'
import type { TemplateWords } from '../template.ts'

export const english: Readonly<Record<Channel, TemplateWords>> = {
  email: {
    subject: '{{visitName}} for your {{carName}}',
    body: `Dear {{ownerName}},

the {{visitName}} of your {{carName}} ({{plate}}) is due on {{dueDate}}. It was last with us on {{lastDate}}.

We have kept two times for you until {{heldUntil}}:

  {{slotOne}}
  {{slotTwo}}

Answer this message with the one that suits you, or ring us on {{shopPhone}} for another.

{{shopName}}
{{shopAddress}}

You get this because you agreed to be reminded. No more messages: {{stopWay}}
`,
  },
  letter: {
    subject: '{{visitName}} for your {{carName}}',
    body: `Dear {{ownerName}},

the {{visitName}} of your {{carName}} ({{plate}}) is due on {{dueDate}}. It was last with us on {{lastDate}}.

We have kept two times for you until {{heldUntil}}: {{slotOne}}, or {{slotTwo}}. Please ring us on {{shopPhone}} to say which suits you, or to find another.

With kind regards
{{shopName}}

You get this because you agreed to be reminded. No more letters: {{stopWay}}
`,
  },
  text: {
    subject: '{{visitName}}',
    body: '{{shopName}}: {{visitName}} for {{plate}} is due {{dueDate}}. Free: {{slotOne}} or {{slotTwo}} (held until {{heldUntil}}). Answer 1 or 2, or ring {{shopPhone}}. No more texts: {{stopWay}}',
  },
  call: {
    subject: '{{ownerName}}, {{carName}} ({{plate}})',
    body: `Good day, this is {{shopName}}. Am I speaking to {{ownerName}}? Is this a good moment?

The {{visitName}} of your {{carName}} is due on {{dueDate}}; it was last with us on {{lastDate}}.

I have kept two times for you: {{slotOne}}, or {{slotTwo}}. Does one of them suit you?

If not now: when may we ring again? If no longer wanted: we will not ring about it again. ({{stopWay}})
`,
  },
}
