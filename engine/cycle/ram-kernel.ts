/**
 * One ram beating on its drive line, step by step.
 *
 * The line carries two waves, one towards the ram and one towards the source; each crosses one reach in one time step
 * (see line-grid.ts). At the ram the step is divided into shorter substeps whenever a valve moves or water passes into the
 * vessel; what the line then feels is the mean over the step, so that no water is lost between the two clocks.
 * Inside a substep the head in the body has a closed form: elastic body, square-root waste valve, and a delivery passage
 * whose inertia and loss are taken implicitly.
 *
 * This is the hot loop of the product. It allocates nothing while it runs.
 */
import { deliveryLossPerFlowSquared, passageInertance } from '../machine/delivery-valve.ts';
import { openingForces, seatArea } from '../machine/waste-valve.ts';
import type { CubicMetrePerSecond, Metre, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import type { LineOptions } from './detailed-line.ts';
import { DetailedLine } from './detailed-line.ts';
import type { Installation } from './installation.ts';
import type { LineGrid } from './line-grid.ts';
import { TABLE_SIZE } from './line-grid.ts';
import { advancePlainLine, type PlainLine, plainLine } from './plain-line.ts';
import { wasteValveTransit } from './valve-transit.ts';

const LAST_INTERVAL = TABLE_SIZE - 2;
/** Substeps in the time that the open waste valve takes to fall through its stroke by its own opening force. */
const SUBSTEPS_PER_TRANSIT = 20;
/** Keeps nought over nought from being no number: a shut valve without a snifter, and no head at all. */
const NOUGHT = 1e-300;
/** A disc that has lifted less than this share of its stroke has trembled, not opened. */
const TREMBLE = 0.05;

/** Judgement: a drowned vessel still gives as a bubble of a thousandth of it would: water, shell and joints. */
const LEAST_AIR_SHARE = 1e-3;

/** What stands behind the delivery valve. */
export type VesselSide =
  /** A head that does not change: how an operating point is found. */
  | { readonly kind: 'fixedHead'; readonly head: Metre }
  /** Air that is squeezed, and a column of water that leaves: how a start or a drowned vessel is followed. */
  | { readonly kind: 'air'; readonly outflow: VesselOutflow };

/** The delivery line as the vessel feels it, once a step. */
export interface VesselOutflow {
  /** Flow out of the vessel after a step, given the vessel's head. */
  advance(vesselHead: Metre, timeStep: Second): CubicMetrePerSecond;
}

/** Names of the numbers in the kernel's state, which stand in one array so that the loop allocates nothing. */
const TIME = 0;
const HEAD = 1;
const OPENING = 2;
const SPEED = 3;
const DELIVERY = 4;
const IS_DELIVERING = 5;
const BACK_FLOW = 6;
const VESSEL_HEAD = 7;
const VESSEL_AIR = 8;
const OUTFLOW = 9;
const CAVITY = 10;
const LAST_MOTION = 11;
const WIDEST = 12;
const SOURCE_LEVEL = 13;
const WASTED = 14;
const DELIVERED = 15;
const SUPPLIED = 16;
const PEAK = 17;
const LOWEST = 18;
const BEATS = 19;
const DRIVE_FLOW = 20;
const WASTE_FLOW = 21;
const SPILLED = 22;
const FASTEST = 23;
const PASSED = 24;
const STATE_SIZE = 25;

/** The last finished beat, in an array for the same reason. */
const BEAT_TIME = 0;
const BEAT_WASTED = 1;
const BEAT_DELIVERED = 2;
const BEAT_SUPPLIED = 3;
const BEAT_PEAK = 4;
const BEAT_LOWEST = 5;
const BEAT_FLOW_AT_CLOSING = 6;

export class RamKernel {
  readonly grid: LineGrid;
  /** Waves towards the ram and towards the source, one of each in every reach. */
  readonly forward: Float64Array;
  readonly backward: Float64Array;
  /** Flow at every node after the last step. */
  readonly flow: Float64Array;
  readonly beat = new Float64Array(7);
  readonly #state = new Float64Array(STATE_SIZE);
  readonly #plain: PlainLine;
  readonly #installation: Installation;
  readonly #maxSubstep: Second;
  readonly #detail: DetailedLine;
  #vessel: VesselSide;
  #isDetailed: boolean;
  #steps = 0;

  constructor(
    installation: Installation,
    grid: LineGrid,
    vessel: VesselSide,
    options: LineOptions & { readonly substeps?: number },
  ) {
    const { water, ram, source } = installation;
    this.#installation = installation;
    this.grid = grid;
    this.#vessel = vessel;
    const n = grid.reaches;
    this.forward = new Float64Array(n);
    this.backward = new Float64Array(n);
    this.flow = new Float64Array(n + 1);
    this.#plain = plainLine(grid, water.vapourHead);
    this.#detail = new DetailedLine(installation, grid, options);
    this.#isDetailed = this.#detail.isNeeded;
    this.#maxSubstep =
      wasteValveTransit(ram.wasteValve) / (options.substeps ?? SUBSTEPS_PER_TRANSIT);
    this.#state[SOURCE_LEVEL] = source.kind === 'store' ? source.depthOverIntake : 0;
    this.#state[VESSEL_HEAD] = vessel.kind === 'fixedHead' ? vessel.head : 0;
    this.#state[VESSEL_AIR] =
      ram.airVessel.volume * Math.max(ram.airVessel.airShare, LEAST_AIR_SHARE);
    this.rest(0, installation.fall);
  }

  get time(): Second {
    return this.#state[TIME] as number;
  }
  get steps(): number {
    return this.#steps;
  }
  get bodyHead(): Metre {
    return this.#state[HEAD] as number;
  }
  get opening(): Metre {
    return this.#state[OPENING] as number;
  }
  get vesselHead(): Metre {
    return this.#state[VESSEL_HEAD] as number;
  }
  get driveFlow(): CubicMetrePerSecond {
    return this.#state[DRIVE_FLOW] as number;
  }
  get wasteFlow(): CubicMetrePerSecond {
    return this.#state[WASTE_FLOW] as number;
  }
  get deliveryFlow(): CubicMetrePerSecond {
    return this.#state[DELIVERY] as number;
  }
  /** Beats since the start: times the waste valve has shut after opening. */
  get beats(): number {
    return this.#state[BEATS] as number;
  }
  /** When the waste valve or the delivery valve last moved. */
  get lastMotion(): Second {
    return this.#state[LAST_MOTION] as number;
  }
  /** Volumes since the start: out of the waste valve, into the vessel, out of the source, over a store's brim. */
  get volumes() {
    const s = this.#state;
    return {
      wasted: s[WASTED] as number,
      delivered: s[DELIVERED] as number,
      supplied: s[SUPPLIED] as number,
      spilled: s[SPILLED] as number,
    };
  }
  /** Fastest flow in the last reach since the start. */
  get fastestFlow(): CubicMetrePerSecond {
    return this.#state[FASTEST] as number;
  }
  /** Depth of a store's water over the intake. */
  get sourceLevel(): Metre {
    return this.#state[SOURCE_LEVEL] as number;
  }
  get isSourceEmpty(): boolean {
    return this.#installation.source.kind === 'store' && (this.#state[SOURCE_LEVEL] as number) <= 0;
  }
  get lastBeat() {
    const b = this.beat;
    return {
      time: b[BEAT_TIME] as number,
      wasted: b[BEAT_WASTED] as number,
      delivered: b[BEAT_DELIVERED] as number,
      supplied: b[BEAT_SUPPLIED] as number,
      peak: b[BEAT_PEAK] as number,
      lowest: b[BEAT_LOWEST] as number,
      flowAtClosing: b[BEAT_FLOW_AT_CLOSING] as number,
    };
  }
  get detail(): DetailedLine {
    return this.#detail;
  }

  /** Water held by the line, the body and the cavities in both, above what they hold at zero head. */
  get storedVolume(): number {
    const { grid } = this;
    let stored = 0;
    for (let i = 0; i < grid.reaches; i++) {
      stored +=
        ((grid.timeStep / 2) * ((this.forward[i] as number) + (this.backward[i] as number))) /
        (grid.impedance[i] as number);
    }
    stored += this.#installation.ram.bodyElasticity * this.bodyHead;
    return stored - (this.#state[CAVITY] as number) - this.#detail.displacedVolume;
  }

  /** Sets the whole line to one flow at one head, and both valves shut. */
  rest(flow: CubicMetrePerSecond, head: Metre): void {
    const { grid } = this;
    for (let i = 0; i < grid.reaches; i++) {
      const b = (grid.impedance[i] as number) * flow;
      this.forward[i] = head + b;
      this.backward[i] = head - b;
    }
    this.flow.fill(flow);
    this.#state[HEAD] = head;
    this.#state[DRIVE_FLOW] = flow;
  }

  /** Squeezes the vessel's air, slowly, to a head: what happens as a line is filled. */
  fillVessel(head: Metre): void {
    const { water, ram } = this.#installation;
    const free = ram.airVessel.volume * Math.max(ram.airVessel.airShare, LEAST_AIR_SHARE);
    this.#state[VESSEL_AIR] =
      (free * water.atmosphericHead) / (water.atmosphericHead + Math.max(0, head));
    this.#state[VESSEL_HEAD] = head;
  }

  /** A person pushes the waste valve to its open stop and lets go. */
  pushOpen(): void {
    this.#state[OPENING] = this.#installation.ram.wasteValve.stroke;
    this.#state[SPEED] = 0;
    this.#state[WIDEST] = this.#installation.ram.wasteValve.stroke;
    this.#state[LAST_MOTION] = this.time;
  }

  /** Changes the fixed head behind the delivery valve. */
  setVesselHead(head: Metre): void {
    this.#vessel = { kind: 'fixedHead', head };
    this.#state[VESSEL_HEAD] = head;
  }

  setVesselSide(vessel: VesselSide): void {
    this.#vessel = vessel;
    if (vessel.kind === 'fixedHead') this.#state[VESSEL_HEAD] = vessel.head;
  }

  /** Forgets the peaks and the fastest flow, so that what follows is measured alone. */
  clearExtremes(): void {
    this.#state[PEAK] = -Infinity;
    this.#state[LOWEST] = Infinity;
    this.#state[FASTEST] = 0;
  }
  get extremes(): { readonly peak: Metre; readonly lowest: Metre } {
    return { peak: this.#state[PEAK] as number, lowest: this.#state[LOWEST] as number };
  }

  /**
   * Runs at most `maxSteps` steps and stops early at the end of a step in which a beat ended.
   * Gives the number of beats that ended, which is 0 when the steps ran out.
   */
  run(maxSteps: number): number {
    const { grid, forward: f, backward: g, flow: q } = this;
    const state = this.#state;
    const plain = this.#plain;
    const { tables, tableOffset, tableScale } = grid;
    const n = grid.reaches;
    const dt = grid.timeStep;
    const { ram, water, source, fall } = this.#installation;
    const valve = ram.wasteValve;
    const stroke = valve.stroke;
    const forces = openingForces(valve);
    const forceShut = forces.atShut;
    const forceSlope = (forces.atOpen - forces.atShut) / stroke;
    const seat = seatArea(valve);
    const seatForce = water.density * GRAVITY * seat;
    const curtainPerOpening = valve.curtainCoefficient * Math.PI * valve.seatDiameter;
    const port2 = (valve.portCoefficient * valve.portArea) ** 2;
    const drag = 0.5 * water.density * valve.dragCoefficient * seat;
    const perGap = 1 / valve.gapArea;
    const perMass = 1 / valve.movingMass;
    const root2g = Math.sqrt(2 * GRAVITY);
    const curtain2Open = (curtainPerOpening * stroke) ** 2;
    const shareOpen = port2 / (curtain2Open + port2);
    const alphaOpen = Math.sqrt(curtain2Open * shareOpen) * root2g;
    const snifterAlpha = ram.snifter ? 0.6 * (Math.PI / 4) * ram.snifter.diameter ** 2 * root2g : 0;
    const inertance = passageInertance(ram.deliveryValve);
    const deliveryLoss = deliveryLossPerFlowSquared(ram.deliveryValve);
    const cracking = ram.deliveryValve.crackingHead;
    const backFlowAllowed = ram.deliveryValve.backFlowPerBeat;
    const elasticity = ram.bodyElasticity;
    const vapourHead = water.vapourHead;
    const isAir = this.#vessel.kind === 'air';
    const polytropic = ram.airVessel.polytropicIndex;
    const atmosphere = water.atmosphericHead;
    const isStore = source.kind === 'store';
    const inflow = isStore ? source.inflow : 0;
    const perSurface = isStore ? 1 / source.surfaceArea : 0;
    const brim = isStore ? source.depthOverIntake : 0;
    const maxSubstep = this.#maxSubstep;
    const impedanceEnd = grid.impedance[n - 1] as number;
    const endOffset = tableOffset[n] as number;

    let time = state[TIME] as number;
    let head = state[HEAD] as number;
    let opening = state[OPENING] as number;
    let speed = state[SPEED] as number;
    let delivery = state[DELIVERY] as number;
    let isDelivering = state[IS_DELIVERING] as number;
    let backFlow = state[BACK_FLOW] as number;
    let passed = state[PASSED] as number;
    let vesselHead = state[VESSEL_HEAD] as number;
    let vesselAir = state[VESSEL_AIR] as number;
    let outflow = state[OUTFLOW] as number;
    let cavity = state[CAVITY] as number;
    let lastMotion = state[LAST_MOTION] as number;
    let widest = state[WIDEST] as number;
    let sourceLevel = state[SOURCE_LEVEL] as number;
    let wasted = state[WASTED] as number;
    let delivered = state[DELIVERED] as number;
    let supplied = state[SUPPLIED] as number;
    let peak = state[PEAK] as number;
    let lowest = state[LOWEST] as number;
    let fastest = state[FASTEST] as number;
    let driveFlow = state[DRIVE_FLOW] as number;
    let wasteFlow = state[WASTE_FLOW] as number;
    let beats = 0;
    let step = 0;

    while (step < maxSteps && beats === 0) {
      step++;
      // Source: the level drives the first reach through entrance and half a reach of friction (losses as in plain-line.ts).
      const sourceHead = isStore ? fall + sourceLevel - brim : fall;
      let u = 0.5 * Math.abs((q[0] as number) + (q[1] as number)) * tableScale;
      let k = u | 0;
      let w = u - k;
      if (k > LAST_INTERVAL) {
        k = LAST_INTERVAL;
        w = 1;
      }
      let t = k + (tableOffset[0] as number);
      let conductance = tables[t] as number;
      conductance += w * ((tables[t + 1] as number) - conductance);
      const intake = (sourceHead - (g[0] as number)) * conductance;
      q[0] = intake;
      supplied += dt * intake;
      if (isStore) {
        sourceLevel += (inflow - intake) * dt * perSurface;
        if (sourceLevel > brim) {
          state[SPILLED] = (state[SPILLED] as number) + (sourceLevel - brim) / perSurface;
          sourceLevel = brim;
        }
      }

      // Line: every node takes the two waves that arrive, and sends two on.
      let arriving = f[0] as number;
      f[0] = (g[0] as number) + plain.firstTwiceImpedance * intake;
      if (this.#isDetailed) {
        arriving = this.#detail.advance(arriving, f, g, q);
        // Once its last cavity has closed, a line that asked for nothing else goes back to the plain loop.
        this.#isDetailed = this.#detail.isNeeded || this.#detail.openCavities > 0;
      } else {
        arriving = advancePlainLine(plain, arriving, f, g, q);
        // Water about to boil needs nodes that can hold a cavity; they take over from the next step.
        if (plain.isBoiling) this.#isDetailed = true;
      }

      // Ram: `arriving` is the wave that reaches it during this step.
      u = Math.abs(driveFlow) * tableScale;
      k = u | 0;
      w = u - k;
      if (k > LAST_INTERVAL) {
        k = LAST_INTERVAL;
        w = 1;
      }
      t = k + endOffset;
      let impedance = tables[t] as number;
      impedance += w * ((tables[t + 1] as number) - impedance);
      const perImpedance = 1 / impedance;

      // A quiet step is taken whole: waste valve on a stop, delivery valve shut, and nothing about to move.
      if (
        isDelivering === 0 &&
        speed === 0 &&
        cavity === 0 &&
        (opening === 0 || opening === stroke)
      ) {
        const alpha = opening === 0 ? snifterAlpha : alphaOpen + snifterAlpha;
        const beta = elasticity / dt + perImpedance;
        const drive = (elasticity / dt) * head + arriving * perImpedance;
        const size = Math.abs(drive);
        const root = (2 * size) / (alpha + Math.sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
        const x = drive < 0 ? -root * root : root * root;
        let isQuiet = x <= vesselHead + cracking && x > vapourHead;
        const leaving = alpha * (drive < 0 ? -root : root);
        if (isQuiet) {
          if (opening === 0) isQuiet = seatForce * x >= forceShut;
          else {
            const gap = leaving * perGap;
            isQuiet = seatForce * shareOpen * x + drag * gap * Math.abs(gap) <= forces.atOpen;
          }
        }
        if (isQuiet) {
          head = x;
          driveFlow = (arriving - x) * perImpedance;
          wasteFlow = leaving;
          wasted += dt * leaving;
          g[n - 1] = arriving - 2 * impedanceEnd * driveFlow;
          q[n] = driveFlow;
          if (driveFlow > fastest) fastest = driveFlow;
          if (x > peak) peak = x;
          if (x < lowest) lowest = x;
          time += dt;
          if (isAir) {
            // The flow of the step before leaves the vessel now, as in a divided step, so that none is counted twice.
            const before = vesselAir;
            vesselAir += dt * outflow;
            vesselHead =
              (vesselHead + atmosphere) * (before / vesselAir) ** polytropic - atmosphere;
            outflow = this.#outflow(vesselHead, dt);
          }
          continue;
        }
      }

      // Otherwise the step is divided, fine enough to follow the disc.
      const substeps = Math.ceil(dt / maxSubstep);
      const h = dt / substeps;
      const give = elasticity / h;
      const perInertance = h / inertance;
      let volume = 0;
      for (let j = 1; j <= substeps; j++) {
        // Waste valve as it stands: area, and the share of the loss that falls across the disc.
        let alpha = snifterAlpha;
        let share = 1;
        if (opening > 0) {
          const curtain2 = (curtainPerOpening * opening) ** 2;
          share = port2 / (curtain2 + port2);
          alpha += Math.sqrt(curtain2 * share) * root2g;
        }
        // Head in the body: β x + α √x = drive, with the passage implicit while it is open.
        let beta = give + perImpedance;
        let drive = give * head + arriving * perImpedance;
        let fixed = 0;
        let slope = 0;
        if (isDelivering === 1) {
          const damped = 1 / (1 + perInertance * deliveryLoss * Math.abs(delivery));
          fixed = (delivery - perInertance * vesselHead) * damped;
          slope = perInertance * damped;
          beta += slope;
          drive -= fixed;
        }
        let size = Math.abs(drive);
        let root = (2 * size) / (alpha + Math.sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
        let x = drive < 0 ? -root * root : root * root;
        if (isDelivering === 0 && x > vesselHead + cracking) {
          // The delivery valve opens: the passage starts from rest under the head that has built up.
          isDelivering = 1;
          backFlow = 0;
          passed = 0;
          fixed = -perInertance * vesselHead;
          slope = perInertance;
          beta += slope;
          drive -= fixed;
          size = Math.abs(drive);
          root = (2 * size) / (alpha + Math.sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
          x = drive < 0 ? -root * root : root * root;
        }
        // What passes the delivery valve in this substep, in the mean.
        let passing = 0;
        if (isDelivering === 1) {
          delivery = fixed + slope * x;
          passing = delivery;
          if (delivery >= 0) passed += delivery * h;
          else {
            const left = Math.min(backFlowAllowed, passed) - backFlow;
            backFlow -= delivery * h;
            if (-delivery * h >= left) {
              // It lets back what is left, never more in all than had passed it, and shuts: the body is solved with that.
              passing = -left / h;
              delivery = 0;
              isDelivering = 0;
              beta = give + perImpedance;
              drive = give * head + arriving * perImpedance - passing;
              size = Math.abs(drive);
              root = (2 * size) / (alpha + Math.sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
              x = drive < 0 ? -root * root : root * root;
            }
          }
          lastMotion = time + j * h;
        }
        if (cavity > 0 || x < vapourHead) {
          // Vapour in the body: the head stands at vapour pressure until the water has filled the cavity again.
          const drawn = -alpha * Math.sqrt(-vapourHead);
          const filling = (arriving - vapourHead) * perImpedance;
          const opened =
            cavity + h * (drawn + passing - filling) + elasticity * (vapourHead - head);
          if (opened > 0) {
            cavity = opened;
            x = vapourHead;
            driveFlow = filling;
            wasteFlow = drawn;
          } else {
            // It closes within this substep: the body is solved with the room in it that water still has to fill.
            beta = give + perImpedance;
            drive = give * head + arriving * perImpedance - passing - cavity / h;
            size = Math.abs(drive);
            root = (2 * size) / (alpha + Math.sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
            x = drive < 0 ? -root * root : root * root;
            cavity = 0;
            driveFlow = (arriving - x) * perImpedance;
            wasteFlow = drive < 0 ? -alpha * root : alpha * root;
          }
        } else {
          driveFlow = (arriving - x) * perImpedance;
          wasteFlow = drive < 0 ? -alpha * root : alpha * root;
        }
        head = x;
        volume += driveFlow;
        wasted += h * wasteFlow;
        delivered += h * passing;
        if (driveFlow > fastest) fastest = driveFlow;
        if (head > peak) peak = head;
        if (head < lowest) lowest = head;

        // Vessel: its air gives way to what comes in. One substep never takes more than half of it.
        if (isAir) {
          const before = vesselAir;
          vesselAir = Math.max(before - h * (passing - outflow), before / 2);
          vesselHead = (vesselHead + atmosphere) * (before / vesselAir) ** polytropic - atmosphere;
        }

        // Disc: Newton's law between its two stops.
        const relative = wasteFlow * perGap + speed;
        const closing = seatForce * share * head + drag * relative * Math.abs(relative);
        const net = forceShut + forceSlope * opening - closing;
        if ((opening > 0 || net > 0) && (opening < stroke || net < 0)) {
          speed += h * net * perMass;
          opening += h * speed;
          lastMotion = time + j * h;
          if (opening > widest) widest = opening;
          if (opening >= stroke) {
            opening = stroke;
            speed = 0;
          } else if (opening <= 0) {
            opening = 0;
            speed = 0;
            if (widest > TREMBLE * stroke) {
              beats++;
              const beat = this.beat;
              beat[BEAT_TIME] = time + j * h;
              beat[BEAT_WASTED] = wasted;
              beat[BEAT_DELIVERED] = delivered;
              beat[BEAT_SUPPLIED] = supplied;
              beat[BEAT_PEAK] = peak;
              beat[BEAT_LOWEST] = lowest;
              beat[BEAT_FLOW_AT_CLOSING] = driveFlow;
            }
            widest = 0;
          }
        } else speed = 0;
      }
      const meanFlow = volume / substeps;
      g[n - 1] = arriving - 2 * impedanceEnd * meanFlow;
      q[n] = meanFlow;
      time += dt;
      if (isAir) {
        outflow = this.#outflow(vesselHead, dt);
      }
    }

    state[TIME] = time;
    state[HEAD] = head;
    state[OPENING] = opening;
    state[SPEED] = speed;
    state[DELIVERY] = delivery;
    state[IS_DELIVERING] = isDelivering;
    state[BACK_FLOW] = backFlow;
    state[PASSED] = passed;
    state[VESSEL_HEAD] = vesselHead;
    state[VESSEL_AIR] = vesselAir;
    state[OUTFLOW] = outflow;
    state[CAVITY] = cavity;
    state[LAST_MOTION] = lastMotion;
    state[WIDEST] = widest;
    state[SOURCE_LEVEL] = sourceLevel;
    state[WASTED] = wasted;
    state[DELIVERED] = delivered;
    state[SUPPLIED] = supplied;
    state[PEAK] = peak;
    state[LOWEST] = lowest;
    state[FASTEST] = fastest;
    state[BEATS] = (state[BEATS] as number) + beats;
    state[DRIVE_FLOW] = driveFlow;
    state[WASTE_FLOW] = wasteFlow;
    this.#steps += step;
    return beats;
  }

  #outflow(vesselHead: Metre, dt: Second): CubicMetrePerSecond {
    return this.#vessel.kind === 'air' ? this.#vessel.outflow.advance(vesselHead, dt) : 0;
  }
}
