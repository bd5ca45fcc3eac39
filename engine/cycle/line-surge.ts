/**
 * A drive line alone: a source, the pipe, and an end that is told what to do. No ram.
 *
 * This is how the line's nodes are held against exact solutions: the grid and the nodes are those that a ram beats on
 * (line-grid.ts, detailed-line.ts), and only the end is different. Friction may be replaced by a simpler law, such as none
 * at all, because the exact solutions need one.
 */
import type { CubicMetrePerSecond, Metre, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import { DetailedLine } from './detailed-line.ts';
import type { Installation } from './installation.ts';
import type { FrictionLaw, LineGrid } from './line-grid.ts';
import { lineGrid, TABLE_SIZE } from './line-grid.ts';

export type LineEnd =
  /** A valve that passes the flow it is told to, at each time: a sudden stop, a slow closure. */
  | { readonly kind: 'flow'; readonly flowAt: (time: Second) => CubicMetrePerSecond }
  /** Opened at time nought to a head that does not change: 0 is the open air. */
  | { readonly kind: 'head'; readonly head: Metre };

/** A line and its source, with what its end does. */
export interface LineSurgeSetup extends Pick<Installation, 'driveLine' | 'water' | 'fall'> {
  readonly end: LineEnd;
  /** Steady flow before time nought. */
  readonly initialFlow: CubicMetrePerSecond;
  /** Least number of reaches. */
  readonly reaches: number;
  /** Darcy friction factor; the engine's own law by default. */
  readonly friction?: FrictionLaw;
}

export class LineSurge {
  readonly grid: LineGrid;
  readonly #fall: Metre;
  readonly #end: LineEnd;
  readonly #nodes: DetailedLine;
  /** Waves towards the end and towards the source, one of each in every reach, and the flow at every node. */
  readonly #forward: Float64Array;
  readonly #backward: Float64Array;
  readonly #flow: Float64Array;
  #headAtEnd: Metre;
  #steps = 0;

  /** The line starts in steady flow. The first step brings it to time nought, when its end first does as it is told. */
  constructor(setup: LineSurgeSetup) {
    const { driveLine, water, fall, initialFlow } = setup;
    const grid = lineGrid(
      driveLine,
      water,
      fall,
      setup.reaches,
      largestTabulatedFlow(setup),
      setup.friction,
    );
    const n = grid.reaches;
    this.grid = grid;
    this.#fall = fall;
    this.#end = setup.end;
    this.#nodes = new DetailedLine({ driveLine, water, fall }, grid, {});
    this.#forward = new Float64Array(n);
    this.#backward = new Float64Array(n);
    this.#flow = new Float64Array(n + 1).fill(initialFlow);
    // Each node takes its loss from the wave that arrives, so the steady heads follow from the source down.
    let arriving = fall;
    for (let i = 0; i < n; i++) {
      const leaving = arriving - initialFlow / this.#tabulated(i, initialFlow);
      this.#backward[i] = leaving;
      arriving = leaving + 2 * (grid.impedance[i] as number) * initialFlow;
      this.#forward[i] = arriving;
    }
    this.#headAtEnd = arriving - this.#tabulated(n, initialFlow) * initialFlow;
  }

  /** Time of the last step. Before the first step the end has not moved yet, and this is below nought. */
  get time(): Second {
    return (this.#steps - 1) * this.grid.timeStep;
  }
  get headAtEnd(): Metre {
    return this.#headAtEnd;
  }
  get flowAtEnd(): CubicMetrePerSecond {
    return this.#flow[this.grid.reaches] as number;
  }
  get flowAtSource(): CubicMetrePerSecond {
    return this.#flow[0] as number;
  }

  /** Mean flow along the line: its momentum over that of one stiff column, when it has one bore. */
  get meanFlow(): CubicMetrePerSecond {
    const { reachLength, reaches } = this.grid;
    let sum = 0;
    let length = 0;
    for (let i = 0; i < reaches; i++) {
      const reach = reachLength[i] as number;
      sum += (reach * ((this.#flow[i] as number) + (this.#flow[i + 1] as number))) / 2;
      length += reach;
    }
    return sum / length;
  }

  /** Water held by the stretched line, above what it holds at no head. */
  get storedVolume(): number {
    const { reaches, timeStep, impedance } = this.grid;
    let stored = 0;
    for (let i = 0; i < reaches; i++) {
      const twiceHead = (this.#forward[i] as number) + (this.#backward[i] as number);
      stored += ((timeStep / 2) * twiceHead) / (impedance[i] as number);
    }
    return stored;
  }

  /** Head at a node between the ends, behind its losses. Holds for plain nodes, which take up no water. */
  headAt(node: number): Metre {
    if (!(node > 0 && node < this.grid.reaches)) {
      throw new RangeError(
        `node must lie between the ends, 1 to ${this.grid.reaches - 1}, got ${node}`,
      );
    }
    return (
      (this.#forward[node] as number) -
      (this.grid.impedance[node] as number) * (this.#flow[node] as number)
    );
  }

  /** One step of the whole line. */
  advance(): void {
    const f = this.#forward;
    const g = this.#backward;
    const q = this.#flow;
    const { impedance, reaches: n } = this.grid;
    this.#steps++;

    // Source: its level drives the first reach through entrance and half a reach of friction.
    const intake = (this.#fall - (g[0] as number)) * this.#tabulated(0, q[0] as number);
    q[0] = intake;
    const first = f[0] as number;
    f[0] = (g[0] as number) + 2 * (impedance[0] as number) * intake;

    // Line: the very nodes that a ram beats on.
    const arriving = this.#nodes.advance(first, f, g, q);

    // End: H = W − (B + r) Q, and W − 2 B Q goes back, as at the ram.
    let flow: CubicMetrePerSecond;
    if (this.#end.kind === 'flow') {
      flow = this.#end.flowAt(this.time);
      this.#headAtEnd = arriving - this.#tabulated(n, flow) * flow;
    } else {
      this.#headAtEnd = this.#end.head;
      flow = (arriving - this.#headAtEnd) / this.#tabulated(n, q[n] as number);
    }
    q[n] = flow;
    g[n - 1] = arriving - 2 * (impedance[n - 1] as number) * flow;
  }

  /** The grid's table of a node at a flow; see LineGrid. */
  #tabulated(node: number, flow: CubicMetrePerSecond): number {
    const { tables, tableOffset, tableScale } = this.grid;
    const u = Math.min(Math.abs(flow) * tableScale, TABLE_SIZE - 1);
    const k = Math.min(Math.floor(u), TABLE_SIZE - 2);
    const at = tables[k + (tableOffset[node] as number)] as number;
    return at + (u - k) * ((tables[k + 1 + (tableOffset[node] as number)] as number) - at);
  }
}

/** A run never goes faster than it began or than the fall could drive it; half as much again for its swings. */
function largestTabulatedFlow({ driveLine, fall, end, initialFlow }: LineSurgeSetup): number {
  if (end.kind === 'flow') return 1.5 * Math.max(Math.abs(initialFlow), 1e-9);
  const widest = Math.max(...driveLine.segments.map((s) => s.pipe.innerDiameter));
  const free = Math.sqrt(2 * GRAVITY * Math.max(fall, 0)) * (Math.PI / 4) * widest ** 2;
  return 1.5 * Math.max(free, Math.abs(initialFlow));
}
