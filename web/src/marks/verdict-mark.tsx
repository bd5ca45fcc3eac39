/**
 * Verdict marks: what a pen would draw on a drum that the ram turns.
 *
 * A whole plate means that it runs, a cut corner that it does not, a broken edge that too little is known. The word
 * always stands beside the mark, so the mark itself is hidden from screen readers.
 */
import type { VerdictKind } from '@fallwright/engine';

export type MarkKind = VerdictKind | 'notEnoughYet';

const WHOLE_PLATE = 'M1 1H43V23H1Z';
const CUT_PLATE = 'M1 1H34L43 10V23H1Z';

interface Mark {
  readonly tone: 'runs' | 'runsWithHelp' | 'fails' | 'waits';
  readonly pen: string;
  readonly penWidth?: number;
  /** A line that the strokes do not reach. */
  readonly reach?: string;
}

const MARKS: Readonly<Record<MarkKind, Mark>> = {
  runs: { tone: 'runs', pen: 'M4.5 17.5L12 6.5V17.5L19.5 6.5V17.5L27 6.5V17.5L34.5 6.5V17.5H39.5' },
  runsAfterHandStart: {
    tone: 'runsWithHelp',
    pen: 'M4.5 18L10 15V18L17 12V18L25 8.5V18L34 5V18H39.5',
  },
  staysOpen: { tone: 'fails', pen: 'M4.5 18.5C11 18.5 11.5 9 19 9H37' },
  staysShut: { tone: 'fails', pen: 'M4.5 18L13 5.5V18H38.5' },
  flutters: {
    tone: 'fails',
    pen: 'M4.5 16L7 10.5L9.5 16L12 10.5L14.5 16L17 10.5L19.5 16L22 10.5L24.5 16L27 10.5L29.5 16L32 10.5L34.5 16L37 10.5L39.5 16',
    penWidth: 1.6,
  },
  doesNotLift: {
    tone: 'fails',
    pen: 'M4.5 19L12.5 12V19L20.5 12V19L28.5 12V19L36.5 12V19',
    reach: 'M5 6H32.5',
  },
  starves: { tone: 'fails', pen: 'M4.5 18L11.5 5.5V18L18.5 10.5V18L25 14V18H38.5' },
  notEnoughYet: { tone: 'waits', pen: 'M6.5 17H12.5M19 17H25M31.5 17H37.5' },
};

const TONE_CLASS = {
  runs: 'runs',
  runsWithHelp: 'helped',
  fails: 'fails',
  waits: 'waits',
} as const;

export function VerdictMark({
  kind,
  width = 44,
}: {
  readonly kind: MarkKind;
  readonly width?: number;
}) {
  const mark = MARKS[kind];
  return (
    <svg
      className={`mark ${TONE_CLASS[mark.tone]}`}
      width={width}
      height={(width * 24) / 44}
      viewBox="0 0 44 24"
      aria-hidden="true"
      focusable="false"
    >
      <path className="plate-of-mark" d={mark.tone === 'fails' ? CUT_PLATE : WHOLE_PLATE} />
      {mark.reach !== undefined && <path className="reach" d={mark.reach} />}
      <path
        className="pen"
        d={mark.pen}
        style={mark.penWidth === undefined ? undefined : { strokeWidth: mark.penWidth }}
      />
    </svg>
  );
}

/** Colour of the word beside a mark: water when it runs, alarm when it does not, ink while it is open. */
export function wordTone(kind: MarkKind): 'of-water' | 'of-alarm' | '' {
  const { tone } = MARKS[kind];
  return tone === 'fails' ? 'of-alarm' : tone === 'waits' ? '' : 'of-water';
}
