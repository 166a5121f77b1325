/** Fills that tell waiting and closures from work without colour. */
export function Patterns() {
  return (
    <defs>
      <pattern id="wait" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="6" height="6" fill="var(--card)" />
        <line x1="0" y1="0" x2="0" y2="6" stroke="var(--soft)" strokeWidth="1.2" opacity="0.5" />
      </pattern>
      <pattern id="closure" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" fill="var(--closed)" />
        <path d="M0 0L8 8M8 0L0 8" stroke="var(--soft)" strokeWidth="0.8" opacity="0.5" />
      </pattern>
      <pattern id="overlap" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <line x1="0" y1="0" x2="0" y2="8" stroke="var(--late)" strokeWidth="3" opacity="0.75" />
      </pattern>
    </defs>
  )
}
