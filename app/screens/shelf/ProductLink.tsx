import { Link } from '@tanstack/react-router'

/** A product by its name, leading to its page. */
export function ProductLink({ id, name }: { id: string; name: string }) {
  return (
    <Link to="/shelf/$section/$id" params={{ section: 'product', id }}>
      {name}
    </Link>
  )
}
