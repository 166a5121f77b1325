import type { Channel } from '../consent.ts'
import type { TemplateWords } from '../template.ts'

export const german: Readonly<Record<Channel, TemplateWords>> = {
  email: {
    subject: '{{visitName}} für Ihren Wagen: {{carName}}',
    body: `Guten Tag {{ownerName}},

für Ihren Wagen {{carName}} ({{plate}}) ist am {{dueDate}} fällig: {{visitName}}. Zuletzt bei uns war er am {{lastDate}}.

Bis {{heldUntil}} halten wir zwei Termine für Sie frei:

  {{slotOne}}
  {{slotTwo}}

Antworten Sie einfach mit dem passenden, oder rufen Sie uns unter {{shopPhone}} an.

{{shopName}}
{{shopAddress}}

Sie erhalten diese Nachricht, weil Sie einer Erinnerung zugestimmt haben. Keine weiteren: {{stopWay}}
`,
  },
  letter: {
    subject: '{{visitName}} für Ihren Wagen: {{carName}}',
    body: `Guten Tag {{ownerName}},

für Ihren Wagen {{carName}} ({{plate}}) ist am {{dueDate}} fällig: {{visitName}}. Zuletzt bei uns war er am {{lastDate}}.

Bis {{heldUntil}} halten wir zwei Termine für Sie frei: {{slotOne}} oder {{slotTwo}}. Bitte sagen Sie uns unter {{shopPhone}}, welcher Ihnen passt, oder nennen Sie einen anderen.

Mit freundlichen Grüßen
{{shopName}}

Sie erhalten diesen Brief, weil Sie einer Erinnerung zugestimmt haben. Keine weiteren: {{stopWay}}
`,
  },
  text: {
    subject: '{{visitName}}',
    body: '{{shopName}}: {{visitName}} für {{plate}} ist am {{dueDate}} fällig. Frei: {{slotOne}} oder {{slotTwo}} (gehalten bis {{heldUntil}}). Antwort 1 oder 2, oder Anruf {{shopPhone}}. Keine weiteren: {{stopWay}}',
  },
  call: {
    subject: '{{ownerName}}, {{carName}} ({{plate}})',
    body: `Guten Tag, hier ist {{shopName}}. Spreche ich mit {{ownerName}}? Passt es gerade?

Für Ihren Wagen {{carName}} ist am {{dueDate}} fällig: {{visitName}}; zuletzt bei uns war er am {{lastDate}}.

Ich habe zwei Termine für Sie freigehalten: {{slotOne}} oder {{slotTwo}}. Passt Ihnen einer davon?

Wenn nicht jetzt: Wann dürfen wir wieder anrufen? Wenn nicht mehr gewünscht: Wir rufen deswegen nicht mehr an. ({{stopWay}})
`,
  },
}
