import type { Channel } from '../consent.ts'
import type { TemplateWords } from '../template.ts'

export const spanish: Readonly<Record<Channel, TemplateWords>> = {
  email: {
    subject: '{{visitName}} de su coche: {{carName}}',
    body: `Hola, {{ownerName}}:

A su coche {{carName}} ({{plate}}) le toca el {{dueDate}}: {{visitName}}. La última vez que vino fue el {{lastDate}}.

Le guardamos dos citas hasta el {{heldUntil}}:

  {{slotOne}}
  {{slotTwo}}

Responda a este mensaje con la que prefiera o llámenos al {{shopPhone}}.

{{shopName}}
{{shopAddress}}

Recibe este mensaje porque aceptó que le avisáramos. No más mensajes: {{stopWay}}
`,
  },
  letter: {
    subject: '{{visitName}} de su coche: {{carName}}',
    body: `Hola, {{ownerName}}:

A su coche {{carName}} ({{plate}}) le toca el {{dueDate}}: {{visitName}}. La última vez que vino fue el {{lastDate}}.

Le guardamos dos citas hasta el {{heldUntil}}: {{slotOne}} o {{slotTwo}}. Llámenos al {{shopPhone}} para decirnos cuál prefiere o para buscar otra.

Un saludo cordial
{{shopName}}

Recibe esta carta porque aceptó que le avisáramos. No más cartas: {{stopWay}}
`,
  },
  text: {
    subject: '{{visitName}}',
    body: '{{shopName}}: {{visitName}} de {{plate}} le toca el {{dueDate}}. Libre: {{slotOne}} o {{slotTwo}} (hasta el {{heldUntil}}). Responda 1 o 2, o llame al {{shopPhone}}. No más mensajes: {{stopWay}}',
  },
  call: {
    subject: '{{ownerName}}, {{carName}} ({{plate}})',
    body: `Hola, le llamamos de {{shopName}}. ¿Hablo con {{ownerName}}? ¿Es buen momento?

A su coche {{carName}} le toca el {{dueDate}}: {{visitName}}; la última vez que vino fue el {{lastDate}}.

Le he guardado dos citas: {{slotOne}} o {{slotTwo}}. ¿Le viene bien alguna?

Si ahora no: ¿cuándo podemos volver a llamar? Si ya no lo desea: no volveremos a llamar por esto. ({{stopWay}})
`,
  },
}
