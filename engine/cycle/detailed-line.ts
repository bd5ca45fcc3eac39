/**
 * The drive line's nodes with everything that a plain node leaves out: air pockets, vapour cavities, walls that creep,
 * friction that depends on how fast the flow changes, and a record of the highest and lowest heads.
 *
 * A node may take up water: Q_left − Q_right = S(H). A plain node has S = 0. It is slower than the plain loop of the
 * kernel, and is used when a run asks for one of these, or from the moment the water in the line is about to boil.
 */

import { type CreepElement, HDPE_CREEP } from '../pipes/creep.ts';
import { MATERIALS } from '../pipes/materials.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import type { CubicMetre, Metre, Ratio } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import { airLockHead } from './air-lock.ts';
import type { Installation } from './installation.ts';
import type { LineGrid } from './line-grid.ts';
import { TABLE_SIZE } from './line-grid.ts';

/** Options of the line's model. All are off by default; a run's record names those that are on. */
export interface LineOptions {
  /** Keep the highest and lowest head at every node. */
  readonly envelope?: boolean;
  /** Friction that grows with the acceleration of the flow. */
  readonly unsteadyFriction?: boolean;
  /** Walls of polyethylene that go on stretching after the pressure has come. */
  readonly wallCreep?: boolean;
}

/**
 * n in p Vⁿ = constant for a caught pocket. Judgement: 1.2, between slow (1.0) and fast (1.4), the usual value for surges
 * in air chambers. Source: Wylie & Streeter (1993), Fluid Transients in Systems (memory).
 */
const POCKET_INDEX: Ratio = 1.2;

const CREEP_OF_PE = HDPE_CREEP.elements;

const LAST_INTERVAL = TABLE_SIZE - 2;
/** Gas smaller than this is gone: a drop of water is 50 mm³. */
const SMALLEST_CAVITY: CubicMetre = 1e-12;

export class DetailedLine {
  readonly isNeeded: boolean;
  readonly modelOptions: readonly string[];
  readonly highest: Float64Array;
  readonly lowest: Float64Array;
  /** Whether a vapour cavity has opened anywhere in the line. */
  hasCavity = false;
  /** Cavities open after the last step. */
  openCavities = 0;
  readonly #grid: LineGrid;
  /** Head at which water boils at each node. */
  readonly #vapourHead: Float64Array;
  readonly #cavity: Float64Array;
  /** Volume of the pocket at each node, 0 where there is none, and p Vⁿ of it with p as absolute head. */
  readonly #pocket: Float64Array;
  readonly #pocketConstant: Float64Array;
  /** Head that the pocket at each node takes; see air-lock.ts. */
  readonly #airLock: Float64Array;
  /** Gauge head that is a perfect vacuum at each node. */
  readonly #vacuumHead: Float64Array;
  readonly #restHead: Metre;
  readonly #hasCreep: boolean;
  /** Wall creep: volume per metre of head, and volume taken up so far, for each element at each node. */
  readonly #creepGive: Float64Array;
  readonly #creepTaken: Float64Array;
  readonly #hasUnsteady: boolean;
  /** Unsteady friction: k times node length over (g A). */
  readonly #unsteady: Float64Array;

  constructor(
    place: Pick<Installation, 'driveLine' | 'water' | 'fall'>,
    grid: LineGrid,
    options: LineOptions,
  ) {
    const { driveLine, water, fall } = place;
    const n = grid.reaches;
    this.#grid = grid;
    this.highest = new Float64Array(n + 1).fill(-Infinity);
    this.lowest = new Float64Array(n + 1).fill(Infinity);
    this.#vapourHead = grid.elevation.map((z) => z + water.vapourHead);
    this.#vacuumHead = grid.elevation.map((z) => z - water.atmosphericHead);
    this.#cavity = new Float64Array(n + 1);
    this.#pocket = new Float64Array(n + 1);
    this.#pocketConstant = new Float64Array(n + 1);
    this.#airLock = new Float64Array(n + 1);
    this.#restHead = fall;
    for (const pocket of driveLine.pockets) {
      if (pocket.volume <= 0) continue;
      const node = nearestInnerNode(grid, pocket.distance);
      this.#pocket[node] = (this.#pocket[node] as number) + pocket.volume;
      this.#airLock[node] = (this.#airLock[node] as number) + airLockHead(driveLine, fall, pocket);
    }
    for (let i = 0; i <= n; i++) {
      const volume = this.#pocket[i] as number;
      this.#pocketConstant[i] = (fall - (this.#vacuumHead[i] as number)) * volume ** POCKET_INDEX;
    }

    const isCreeping = (segment: PipeSegment) => MATERIALS[segment.pipe.material].isPolyethylene;
    this.#hasCreep = options.wallCreep === true && driveLine.segments.some(isCreeping);
    this.#creepGive = new Float64Array(CREEP_OF_PE.length * (n + 1));
    this.#creepTaken = new Float64Array(CREEP_OF_PE.length * (n + 1));
    this.#hasUnsteady = options.unsteadyFriction === true;
    this.#unsteady = new Float64Array(n + 1);
    for (let i = 1; i < n; i++) {
      for (const reach of [i - 1, i]) {
        const segment = driveLine.segments[grid.segmentOfReach[reach] as number] as PipeSegment;
        const bore = segment.pipe.innerDiameter;
        const area = (Math.PI / 4) * bore ** 2;
        const half = (grid.reachLength[reach] as number) / 2;
        if (this.#hasCreep && isCreeping(segment)) {
          // Volume per metre of head: A dx (D/e) ρ g J, from hoop strain ε = p D/(2e) J and dA/A = 2 ε.
          const perCompliance =
            (area * half * bore * water.density * GRAVITY) / segment.pipe.wallThickness;
          CREEP_OF_PE.forEach((element, m) => {
            const at = i * CREEP_OF_PE.length + m;
            this.#creepGive[at] =
              (this.#creepGive[at] as number) + perCompliance * element.compliance;
          });
        }
        const k = unsteadyFrictionCoefficient(
          (Math.sqrt(2 * GRAVITY * fall) * bore) / water.kinematicViscosity / 2,
        );
        this.#unsteady[i] = (this.#unsteady[i] as number) + (k * half) / (GRAVITY * area);
      }
    }
    const names: string[] = [];
    if (this.#hasUnsteady) names.push('unsteady friction');
    if (this.#hasCreep) names.push('wall creep');
    this.modelOptions = names;
    this.isNeeded =
      options.envelope === true ||
      this.#hasCreep ||
      this.#hasUnsteady ||
      this.#pocket.some((volume) => volume > 0);
  }

  /** Water kept out of the line by vapour and caught air, less what creeping walls have taken up. */
  get displacedVolume(): CubicMetre {
    let sum = 0;
    for (let i = 0; i < this.#cavity.length; i++) {
      sum += (this.#cavity[i] as number) + (this.#pocket[i] as number);
    }
    for (let i = 0; i < this.#creepTaken.length; i++) sum -= this.#creepTaken[i] as number;
    return sum;
  }

  /** Forgets the highest and lowest heads so far. */
  clearExtremes(): void {
    this.highest.fill(-Infinity);
    this.lowest.fill(Infinity);
  }

  /**
   * One step of the inner nodes. `arriving` is the wave that reaches the first of them; what the kernel's plain loop
   * does to `f`, `g` and `q` is done here too. Gives the wave that reaches the ram.
   */
  advance(arriving: number, f: Float64Array, g: Float64Array, q: Float64Array): number {
    const grid = this.#grid;
    const { tables, tableOffset, impedance, timeStep } = grid;
    const halfScale = grid.tableScale / 2;
    const n = grid.reaches;
    let upstream = q[0] as number;
    this.openCavities = 0;
    for (let i = 1; i < n; i++) {
      const next = f[i] as number;
      const opposing = g[i] as number;
      const left = impedance[i - 1] as number;
      const right = impedance[i] as number;
      const old = q[i] as number;
      // The mean of two nodes, as in the plain loop.
      const u = Math.abs(old + (q[i + 1] as number)) * halfScale;
      let k = u | 0;
      let w = u - k;
      if (k > LAST_INTERVAL) {
        k = LAST_INTERVAL;
        w = 1;
      }
      const t = k + (tableOffset[i] as number);
      let conductance = tables[t] as number;
      conductance += w * ((tables[t + 1] as number) - conductance);

      let wave = arriving;
      let leftAndLoss = 1 / conductance - right;
      if (this.#hasUnsteady) {
        // Vítkovský's form of Brunone's law: h = (k L/gA) [ ∂Q/∂t + a sign(Q) |∂Q/∂x| ], where a ∂x is one step of time.
        // ∂Q/∂t takes the flow that is sought: with that of the step before, waves as short as the grid grow for ever.
        const perFlow = (this.#unsteady[i] as number) / timeStep;
        leftAndLoss += perFlow;
        wave += perFlow * (old - Math.sign(old) * Math.abs(old - upstream));
      }
      upstream = old;

      let flowLeft: number;
      let flowRight: number;
      if ((this.#pocket[i] as number) > 0) {
        wave -= this.#airLock[i] as number;
        // Stretched air fills up with vapour, so its pressure does not fall below that either.
        const head = Math.max(
          this.#pocketHead(i, wave, opposing, leftAndLoss, right),
          this.#vapourHead[i] as number,
        );
        flowLeft = (wave - head) / leftAndLoss;
        flowRight = (head - opposing) / right;
        this.#pocket[i] = (this.#pocket[i] as number) - timeStep * (flowLeft - flowRight);
      } else {
        let give = 0;
        let taken = 0;
        if (this.#hasCreep) {
          for (let m = 0; m < CREEP_OF_PE.length; m++) {
            const time = (CREEP_OF_PE[m] as CreepElement).retardationTime;
            const rate = 1 / (time + timeStep);
            const at = i * CREEP_OF_PE.length + m;
            give += (this.#creepGive[at] as number) * rate;
            taken += (this.#creepTaken[at] as number) * rate;
          }
        }
        // Q_left − Q_right = give (H − H_rest) − taken; a plain node has neither.
        const source = taken + give * this.#restHead;
        let head =
          (wave / leftAndLoss + opposing / right + source) / (1 / leftAndLoss + 1 / right + give);
        const cavity = this.#cavity[i] as number;
        const vapour = this.#vapourHead[i] as number;
        if (cavity > 0 || head < vapour) {
          // The head stands at vapour pressure while the gap between the two columns opens or closes.
          const opened =
            cavity +
            timeStep *
              ((vapour - opposing) / right -
                (wave - vapour) / leftAndLoss +
                give * vapour -
                source);
          if (opened > SMALLEST_CAVITY) {
            this.hasCavity = true;
            this.openCavities++;
            this.#cavity[i] = opened;
            head = vapour;
          } else {
            // It closes within this step: the water that meets in it is shared so that none is lost.
            this.#cavity[i] = 0;
            head =
              (wave / leftAndLoss + opposing / right + source - cavity / timeStep) /
              (1 / leftAndLoss + 1 / right + give);
          }
        }
        flowLeft = (wave - head) / leftAndLoss;
        flowRight = (head - opposing) / right;
        if (this.#hasCreep) this.#creep(i, head);
      }
      q[i] = (flowLeft + flowRight) / 2;
      g[i - 1] = arriving - 2 * left * flowLeft;
      f[i] = opposing + 2 * right * flowRight;
      const head = opposing + right * flowRight;
      if (head > (this.highest[i] as number)) this.highest[i] = head;
      if (head < (this.lowest[i] as number)) this.lowest[i] = head;
      arriving = next;
    }
    return arriving;
  }

  #creep(node: number, head: Metre): void {
    const { timeStep } = this.#grid;
    for (let m = 0; m < CREEP_OF_PE.length; m++) {
      const time = (CREEP_OF_PE[m] as CreepElement).retardationTime;
      const at = node * CREEP_OF_PE.length + m;
      const target = (this.#creepGive[at] as number) * (head - this.#restHead);
      const taken = this.#creepTaken[at] as number;
      this.#creepTaken[at] = taken + (timeStep * (target - taken)) / (time + timeStep);
    }
  }

  /** Head at a pocket: Newton's method on the water balance of its node, from the head of the step before. */
  #pocketHead(node: number, wave: number, opposing: number, left: number, right: number): Metre {
    const { timeStep } = this.#grid;
    const volume = this.#pocket[node] as number;
    const constant = this.#pocketConstant[node] as number;
    const vacuum = this.#vacuumHead[node] as number;
    const both = 1 / left + 1 / right;
    const push = wave / left + opposing / right;
    // In terms of the new volume V: (V₀ − V)/dt = push − both · H(V), H = C V⁻ⁿ + vacuum; monotone in V.
    let v = volume;
    for (let iteration = 0; iteration < 20; iteration++) {
      const absolute = constant / v ** POCKET_INDEX;
      const error = (volume - v) / timeStep - push + both * (absolute + vacuum);
      const slope = -1 / timeStep - (both * POCKET_INDEX * absolute) / v;
      const step = error / slope;
      // A pocket is never squeezed by more than half in one correction, so that its volume stays above nought.
      v = Math.max(v - step, v / 2);
      if (Math.abs(step) < 1e-9 * v) break;
    }
    return constant / v ** POCKET_INDEX + vacuum;
  }
}

/**
 * Coefficient k of unsteady friction.
 *
 *   k = √C* / 2,  C* = 7.41 / Re^{log₁₀(14.3/Re^0.05)} in turbulent flow, 0.00476 in laminar flow
 *
 * Source: Vardy & Brown (2003), J. Sound and Vibration 259(5), 1011–1036 (memory, no page read).
 */
export function unsteadyFrictionCoefficient(reynolds: Ratio): Ratio {
  const shear = reynolds < 2300 ? 0.00476 : 7.41 / reynolds ** Math.log10(14.3 / reynolds ** 0.05);
  return Math.sqrt(shear) / 2;
}

function nearestInnerNode(grid: LineGrid, distance: Metre): number {
  let best = 1;
  for (let i = 1; i < grid.reaches; i++) {
    const closer =
      Math.abs((grid.distance[i] as number) - distance) <
      Math.abs((grid.distance[best] as number) - distance);
    if (closer) best = i;
  }
  return best;
}
