/**
 * The inner nodes of a drive line with nothing in it but water: one step, the fastest way.
 *
 * Each node takes the wave that arrives from either side, passes the flow that its losses allow, and sends two waves on.
 * It stands in a function of its own because the compiler then keeps its few numbers in registers: measured, a step of 64
 * reaches takes 390 ns this way and 470 ns inside the kernel's long loop (npm run bench).
 */
import type { LineGrid } from './line-grid.ts';
import { TABLE_SIZE } from './line-grid.ts';

const LAST_INTERVAL = TABLE_SIZE - 2;

/** What the step needs of a grid, laid out for it. */
export interface PlainLine {
  /**
   * Runs of alike nodes: the inner ones of each segment, and each joint of two segments by itself. Three numbers a run: its
   * first node, the node after its last, and where its table starts.
   */
  readonly runNodes: Int32Array;
  /** For each run twice the impedance of the reach before its nodes, and of the reach behind them. */
  readonly runImpedances: Float64Array;
  readonly tables: Float64Array;
  readonly tableScale: number;
  /** Twice the impedance of the first reach. */
  readonly firstTwiceImpedance: number;
  /** Twice the head at which water boils at each node. */
  readonly twiceVapourHead: Float64Array;
  /** Set when water somewhere came below its vapour pressure in the last step. */
  isBoiling: boolean;
}

/** Lays a grid out for the plain step; `vapourHead` is that of the water at a node of no elevation. */
export function plainLine(grid: LineGrid, vapourHead: number): PlainLine {
  const nodes: number[] = [];
  const impedances: number[] = [];
  for (let i = 1; i < grid.reaches; i++) {
    const table = grid.tableOffset[i] as number;
    if (nodes.length > 0 && nodes.at(-1) === table) {
      nodes[nodes.length - 2] = i + 1;
      continue;
    }
    nodes.push(i, i + 1, table);
    impedances.push(2 * (grid.impedance[i - 1] as number), 2 * (grid.impedance[i] as number));
  }
  return {
    runNodes: Int32Array.from(nodes),
    runImpedances: Float64Array.from(impedances),
    tables: grid.tables,
    tableScale: grid.tableScale,
    firstTwiceImpedance: 2 * (grid.impedance[0] as number),
    twiceVapourHead: grid.elevation.map((z) => 2 * (z + vapourHead)),
    isBoiling: false,
  };
}

/**
 * One step of the inner nodes. `wave` is what reaches the first of them; `f`, `g` and `q` are the waves towards the ram,
 * towards the source, and the flows. Gives the wave that reaches the ram.
 */
export function advancePlainLine(
  line: PlainLine,
  wave: number,
  f: Float64Array,
  g: Float64Array,
  q: Float64Array,
): number {
  const { runNodes, runImpedances, tables, twiceVapourHead } = line;
  const halfScale = line.tableScale / 2;
  let arriving = wave;
  let isBoiling = false;
  const runs = runImpedances.length >> 1;
  for (let run = 0; run < runs; run++) {
    const end = runNodes[3 * run + 1] as number;
    const table = runNodes[3 * run + 2] as number;
    const before = runImpedances[2 * run] as number;
    const behind = runImpedances[2 * run + 1] as number;
    const start = runNodes[3 * run] as number;
    let here = q[start] as number;
    for (let i = start; i < end; i++) {
      const next = f[i] as number;
      const opposing = g[i] as number;
      // Losses follow the flow of the step before, as the mean of two nodes: from one node alone, where losses grow faster
      // than the flow (laminar flow turning turbulent), neighbours would take turns at running fast and slow for ever.
      const behindIt = q[i + 1] as number;
      const u = Math.abs(here + behindIt) * halfScale;
      here = behindIt;
      let k = u | 0;
      let w = u - k;
      if (k > LAST_INTERVAL) {
        k = LAST_INTERVAL;
        w = 1;
      }
      const at = tables[k + table] as number;
      const conductance = at + w * ((tables[k + table + 1] as number) - at);
      const flow = (arriving - opposing) * conductance;
      q[i] = flow;
      g[i - 1] = arriving - before * flow;
      const sent = opposing + behind * flow;
      f[i] = sent;
      if (sent + opposing < (twiceVapourHead[i] as number)) isBoiling = true;
      arriving = next;
    }
  }
  line.isBoiling = isBoiling;
  return arriving;
}
