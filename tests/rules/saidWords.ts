import { parseSync } from 'oxc-parser'
import { read, trackedFiles } from './trackedFiles.ts'

/** A text that the code says, and where. */
export interface SaidText {
  text: string
  path: string
  line: number
}

interface Node {
  type: string
  start: number
  [key: string]: unknown
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

function* within(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const each of value) yield* within(each)
  else if (isNode(value)) {
    yield value
    for (const [key, child] of Object.entries(value)) if (key !== 'parent') yield* within(child)
  }
}

const nameOf = (tag: unknown) => (tag as { name: { name?: string } }).name.name

/** The texts an expression may come to: a literal, or either side of a choice. */
function textsOf(node: unknown): string[] {
  if (!isNode(node)) return []
  if (node.type === 'Literal') return typeof node.value === 'string' ? [node.value] : []
  if (node.type === 'TemplateLiteral') {
    const [only, ...more] = node.quasis as { value: { cooked: string } }[]
    return only && more.length === 0 ? [only.value.cooked] : []
  }
  if (node.type === 'ConditionalExpression') return [...textsOf(node.consequent), ...textsOf(node.alternate)]
  if (node.type === 'JSXExpressionContainer') return textsOf(node.expression)
  return []
}

/** The texts of `say('…')`, `word('…')` and `<Say text="…">` in a file, and the words in its tags that go through none. */
export function saidIn(path: string, source = read(path)): { said: SaidText[]; bare: SaidText[] } {
  const said: SaidText[] = []
  const bare: SaidText[] = []
  const lineAt = (start: number) => source.slice(0, start).split('\n').length
  const keep = (list: SaidText[], node: Node, texts: string[]) =>
    list.push(...texts.map(text => ({ text, path, line: lineAt(node.start) })))
  for (const node of within(parseSync(path, source).program)) {
    if (node.type === 'CallExpression') {
      const callee = node.callee as { name?: string }
      if (callee.name === 'say' || callee.name === 'word')
        keep(said, node, textsOf((node.arguments as unknown[])[0]))
    } else if (node.type === 'JSXOpeningElement' && nameOf(node) === 'Say') {
      const text = (node.attributes as { name?: { name?: string }; value?: unknown }[]).find(
        attribute => attribute.name?.name === 'text',
      )
      keep(said, node, textsOf(text?.value))
    } else if (node.type === 'JSXElement' && nameOf(node.openingElement) !== 'code')
      for (const child of node.children as Node[])
        if (child.type === 'JSXText' && /\p{L}{2}/u.test(child.value as string))
          keep(bare, child, [(child.value as string).trim()])
  }
  return { said, bare }
}

/** The files whose words people read: not the invented shop, nor what writes to the shell. */
export const spokenFiles = (): string[] =>
  trackedFiles().filter(
    path => /^(app|main)\/.*\.tsx?$/.test(path) && !/\/generated\/|^main\/services\/demo\//.test(path),
  )
