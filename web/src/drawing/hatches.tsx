/** Fills that carry the matter when colour is gone. One copy a page; drawings refer to them by name. */
export function Hatches() {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden="true" focusable="false">
      <defs>
        <pattern id="hatch-water" width="26" height="10" patternUnits="userSpaceOnUse">
          <path
            d="M2 2.5h12M16 7.5h9"
            style={{ stroke: 'var(--water)', strokeWidth: 0.7, strokeOpacity: 0.55 }}
          />
        </pattern>
        <pattern
          id="hatch-metal"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0v6" style={{ stroke: 'var(--metal)', strokeWidth: 1.3 }} />
        </pattern>
      </defs>
    </svg>
  );
}
